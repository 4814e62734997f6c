"""Exact ranges of readings, with open and closed ends.

In: ends as Decimals. Out: frozen `Range`s with membership and intersection.

A range is stored as two cuts of the number line. A cut is just before or just after a value, so
open and closed ends need no special cases: `12.2 to 12.6` runs from the cut before 12.2 to the cut
after 12.6, and `below 12.2` ends at the cut before 12.2. Over-limit of the instrument (OL) is the
range between the cut before and the cut after infinity.
"""

from decimal import Decimal
from typing import NamedTuple

INFINITY = Decimal("Infinity")


class Cut(NamedTuple):
    """A place between numbers: just before `value`, or just after it."""

    value: Decimal
    after: bool


class Range(NamedTuple):
    """All readings between two cuts."""

    low: Cut
    high: Cut

    @property
    def empty(self) -> bool:
        """Whether it contains nothing: its ends are in the wrong order."""
        return self.low >= self.high

    def contains(self, value: Decimal) -> bool:
        """Return whether it contains a reading; infinity is OL."""
        return self.low <= (value, False) and (value, True) <= self.high

    def intersection(self, other: "Range") -> "Range":
        """Return the range that is in both; it may be empty."""
        return Range(max(self.low, other.low), min(self.high, other.high))


BOTTOM = Cut(-INFINITY, False)
TOP = Cut(INFINITY, False)
OVER = Range(TOP, Cut(INFINITY, True))
EVERYTHING = Range(BOTTOM, TOP)

Box = tuple[Range, ...]


def below(value: Decimal) -> Range:
    """Return the range of all smaller values."""
    return Range(BOTTOM, Cut(value, False))


def above(value: Decimal) -> Range:
    """Return the range of all larger values."""
    return Range(Cut(value, True), TOP)


def at_most(value: Decimal) -> Range:
    """Return the range of the value and all smaller ones."""
    return Range(BOTTOM, Cut(value, True))


def at_least(value: Decimal) -> Range:
    """Return the range of the value and all larger ones."""
    return Range(Cut(value, False), TOP)


def between(
    low: Decimal, high: Decimal, *, low_open: bool = False, high_open: bool = False
) -> Range:
    """Return the range between two values, with or without its ends."""
    return Range(Cut(low, low_open), Cut(high, not high_open))
