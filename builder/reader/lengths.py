"""Texts that are too long for their box on the chart, and lines to do that are too long.

In: the map of a tree or of the conditions. Out: a warning for each text beyond its limit; three
times the limit is an error of the schema.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.model.text import Text
from builder.reader.nodes import Map

LINES = dict.fromkeys(("do", "enter", "undo"), 80)  # lines to do, one action each
LIMITS = (
    dict.fromkeys(("check", "action", "fix", "cause", "stop"), 60)
    | dict.fromkeys(("result", "means"), 28)
    | {"option": 40, "note": 400}
    | LINES
)


def too_long(root: Map) -> Iterator[Finding]:
    """Yield a warning for every text of a tree that is longer than its limit."""
    for key, value in root.items():
        if isinstance(value, Text):
            limit = LIMITS.get(key)
            if limit and limit < len(value) <= 3 * limit:
                yield _warning(key, value, limit)
        elif isinstance(value, Map):
            yield from _long_results(value) if key == "results" else too_long(value)
        else:
            limit = LINES.get(key)
            for item in value:
                if isinstance(item, Map):
                    yield from too_long(item)
                elif limit and isinstance(item, Text) and limit < len(item) <= 3 * limit:
                    yield _warning(key, item, limit)


def _long_results(branches: Map) -> Iterator[Finding]:
    """Yield a warning for every long result of a map from results to branches."""
    limit = LIMITS["result"]
    for words in branches:
        if len(words) > limit:
            yield _warning(Text("result"), words, limit)


def _warning(key: Text, value: Text, limit: int) -> Finding:
    if key in LINES:
        return Finding("too-long", Severity.WARNING, value.at,
                       f"a line of `{key}` is {len(value)} characters; limit {limit}",
                       "a line is one action, and is read on a phone with greasy hands",
                       "make two lines of it, or say it in fewer words")  # fmt: skip
    return Finding("too-long", Severity.WARNING, value.at,
                   f"`{key}` is {len(value)} characters; limit {limit}",
                   "the text becomes too small on the wall chart", _shorter(key))  # fmt: skip


def _shorter(key: Text) -> str:
    if key in ("result", "means"):
        return "shorten it: a result has no `note` of its own"
    if key == "check":
        return "shorten it, and put how it is done in `do` and the rest in `note` or an article"
    return "shorten it, and put the rest in `note` or an article"
