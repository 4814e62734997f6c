"""Where something was written, and text that remembers it.

In: what the reader found in a file. Out: `Position`, `Text` (a str) and `Number` (a Decimal) that
carry their place, so that any room can point at the author's line without asking the reader again.
"""

from decimal import Decimal
from typing import NamedTuple, Self


class Position(NamedTuple):
    """A stretch of a file; lines and columns count from 1, the end is exclusive."""

    file: str  # relative to the shop, with forward slashes
    line: int
    column: int
    end_line: int
    end_column: int


NOWHERE = Position("", 1, 1, 1, 1)


class Text(str):
    """Text as the author wrote it, and where."""

    __slots__ = ("at",)
    at: Position

    def __new__(cls, text: str, at: Position = NOWHERE) -> Self:
        """Make a text that remembers its place."""
        made = super().__new__(cls, text)
        made.at = at
        return made

    def __reduce__(self) -> tuple[type["Text"], tuple[str, Position]]:
        """Take the place along when it is handed to another process."""
        return type(self), (str(self), self.at)


class Number(Decimal):
    """An exact number as the author wrote it, and where."""

    __slots__ = ("at",)
    at: Position

    def __new__(cls, text: str, at: Position = NOWHERE) -> Self:
        """Make a number that remembers its place; the text is a plain decimal."""
        made = super().__new__(cls, text)
        made.at = at
        return made
