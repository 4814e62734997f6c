"""Positions in files, and texts and numbers that know theirs.

In: the text of a file. Out: `Position`, `Text` (a str) and `Number` (a Decimal) that
know their position, so that every room can point at the author's line.
"""

from decimal import Decimal
from typing import Any, NamedTuple, Self


class Position(NamedTuple):
    """A span of a file; lines and columns count from 1, the end is exclusive."""

    file: str  # relative to the shop, with forward slashes
    line: int
    column: int
    end_line: int
    end_column: int


NOWHERE = Position("", 1, 1, 1, 1)


class Text(str):
    """Text as the author wrote it, with its position."""

    __slots__ = ("at",)
    at: Position

    def __new__(cls, text: str, at: Position = NOWHERE) -> Self:
        """Return a text with a position."""
        self = str.__new__(cls, text)  # once for every key and value; super() takes longer
        self.at = at
        return self

    def __reduce__(self) -> tuple[type["Text"], tuple[str, Position]]:
        """Pickle the position too."""
        return type(self), (str(self), self.at)


class Number(Decimal):
    """An exact number as the author wrote it, with its position."""

    __slots__ = ("at",)
    at: Position

    def __new__(cls, text: str, at: Position = NOWHERE) -> Self:
        """Return a number with a position; the text is a plain decimal."""
        self = super().__new__(cls, text)
        self.at = at
        return self

    def __reduce__(self) -> Any:  # Decimal's has a narrower type
        """Pickle the position too."""
        return type(self), (str(self), self.at)
