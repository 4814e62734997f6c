"""Texts that are too long for their box on the chart, and lines to do that are too long.

In: the map of a tree or of the conditions. Out: a warning for each text beyond its limit; three
times the limit is an error of the schema.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.model.text import Text
from builder.reader.nodes import Map, Seq

LIMITS = (
    dict.fromkeys(("check", "action", "fix", "cause", "stop"), 60)
    | dict.fromkeys(("result", "means"), 28)
    | {"option": 40, "note": 400}
)
LINES = ("do", "enter", "undo")  # lines to do, one action each
LINE_LIMIT = 80


def too_long(root: Map) -> Iterator[Finding]:
    """Yield a warning for every text of a tree that is longer than its limit."""
    for key, value in root.items():
        if isinstance(value, Text):
            limit = LIMITS.get(key)
            if limit and limit < len(value) <= 3 * limit:
                yield _warning(key, value, limit)
            yield from _long_line(key, value)
        elif isinstance(value, Map):
            yield from too_long(value)
        elif isinstance(value, Seq):
            for item in value:
                if isinstance(item, Map):
                    yield from too_long(item)
                elif isinstance(item, Text):
                    yield from _long_line(key, item)


def _long_line(key: Text, line: Text) -> Iterator[Finding]:
    if key in LINES and LINE_LIMIT < len(line) <= 3 * LINE_LIMIT:
        yield Finding("too-long", Severity.WARNING, line.at,
                      f"a line of `{key}` is {len(line)} characters; limit {LINE_LIMIT}",
                      "a line is one action, and is read on a phone with greasy hands",
                      "make two lines of it, or say it in fewer words")  # fmt: skip


def _warning(key: Text, value: Text, limit: int) -> Finding:
    return Finding("too-long", Severity.WARNING, value.at,
                   f"`{key}` is {len(value)} characters; limit {limit}",
                   "the text becomes too small on the wall chart",
                   "shorten it, and put the rest in `note` or an article")  # fmt: skip
