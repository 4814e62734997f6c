"""Texts that are too long for their box on the chart.

In: the map of a tree. Out: a warning for each text beyond its limit; three times the limit is an
error of the schema.
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


def too_long(root: Map) -> Iterator[Finding]:
    """Yield a warning for every text of a tree that is longer than its limit."""
    for key, value in root.items():
        if isinstance(value, Text):
            limit = LIMITS.get(key)
            if limit and limit < len(value) <= 3 * limit:
                yield _warning(key, value, limit)
        elif isinstance(value, Map):
            yield from too_long(value)
        elif isinstance(value, Seq):
            for item in value:
                if isinstance(item, Map):
                    yield from too_long(item)


def _warning(key: Text, value: Text, limit: int) -> Finding:
    return Finding("too-long", Severity.WARNING, value.at,
                   f"`{key}` is {len(value)} characters; limit {limit}",
                   "the text becomes too small on the wall chart",
                   "shorten it, and put the rest in `note` or an article")  # fmt: skip
