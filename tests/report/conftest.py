"""A few findings of every shape, and the lines that they point at."""

import pytest

from builder.model.finding import Finding, Related, Severity
from builder.model.text import Position

FILE = "trees/charging/lamp-on.yml"
LINES = {
    FILE: [
        "format: 2",
        "title: Ladekontrolle 充電 an",
        "steps:",
        "  running:",
        "    results:",
        "      - {result: below 13.2, branch: belt}",
        "      - {result: 13.4 to 14.8, branch: good}",
        "    note: " + "far away " * 30 + "here",
    ],
    "kb/tools.yml": ["multimetre:"],
}


def at(line: int, column: int, end: int, file: str = FILE) -> Position:
    """Return a stretch of one line."""
    return Position(file, line, column, line, end)


@pytest.fixture
def sources():
    """Return the function that gives the lines of a file."""
    return lambda file: LINES.get(file, [])


@pytest.fixture
def findings() -> list[Finding]:
    """Return findings of both severities, with and without related places."""
    return [
        Finding("unknown-key", Severity.ERROR, at(1, 1, 7), "unknown key `format`",
                "it would be passed over", "delete it"),
        Finding("slang", Severity.WARNING, at(2, 22, 24), "`充電` is slang",
                "not found", "say `an`"),
        Finding("reading-gap", Severity.ERROR, at(6, 18, 28), "no result takes 13.3 V",
                "a technician who reads 13.3 V has nowhere to go",
                "let one range start where the other ends: `13.2 to 14.8`",
                (Related(at(7, 18, 30), "the range above it"),
                 Related(at(1, 1, 11, "kb/tools.yml"), "and its tool"))),
        Finding("too-long", Severity.WARNING, at(8, 281, 285), "too long", "small on the wall", ""),
        Finding("dead-end", Severity.ERROR, Position(FILE, 4, 3, 6, 41), "two\nlines, 100 %: so"),
        Finding("size", Severity.ERROR, Position("trees/a, b:c.yml", 1, 1, 1, 1), "too large",
                "nobody reads it", "split it"),
    ]  # fmt: skip
