"""The lines of a file as an author sees them: keys, dashes and columns.

In: the lines of a file. Out: what a line starts with, and a slip in one; YAML itself is elsewhere.
"""

import re
from collections.abc import Iterator
from functools import cache
from typing import Any, NamedTuple

from builder.reader.schemas.schema_list import FILE_KINDS

KEY_LINE = re.compile(r"( *(?:- +)*)([\w-]+)(:?)( ?)(.*)")


class LineChange(NamedTuple):
    """What is to be written in a line instead of something; line and column count from 0."""

    line: int
    column: int
    old: str
    new: str


class LineSlip(NamedTuple):
    """A mistake and its place; line and column count from 0."""

    line: int
    column: int
    message: str
    hint: str
    change: LineChange | None = None  # None where the hint leaves a choice


def indented(line: int, width: int, wanted: int) -> LineChange:
    """Return the change that starts a line in another column."""
    return LineChange(line, 0, " " * width, " " * wanted)


@cache
def words_of_the_format() -> frozenset[str]:
    """Return every key that some kind of file has."""
    return frozenset(_keys(dict(FILE_KINDS)))


def _keys(schema: Any) -> Iterator[str]:
    parts = schema.values() if isinstance(schema, dict) else schema
    if isinstance(schema, dict) and isinstance(schema.get("properties"), dict):
        yield from schema["properties"]
    for part in parts:
        if isinstance(part, dict | list):
            yield from _keys(part)


def content_above(lines: list[str], line: int) -> int:
    """Return the nearest line above with something in it; the line itself where there is none."""
    above = (at for at in range(line - 1, -1, -1) if has_content(lines[at]))
    return next(above, line)


def has_content(line: str) -> bool:
    """Whether a line is more than blanks or a comment."""
    return bool(line.strip()) and not line.lstrip().startswith("#")


def indent_of(line: str) -> int:
    """Return the column in which a line starts, counted from 0."""
    return len(line) - len(line.lstrip(" "))
