"""Exact ranges of readings, with open and closed ends.

In: ends as Decimals. Out: frozen `Range`s that say what they include and where two of them meet.

A range is kept as two cuts of the number line. A cut lies just before or just after a value, so
open and closed ends need no cases of their own: `12.2 to 12.6` runs from the cut before 12.2 to the
cut after 12.6, and `below 12.2` ends at the cut before 12.2. Over the instrument's range (OL) is
the stretch between the cut before and the cut after infinity.
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
        """Whether nothing falls into it: its ends stand in the wrong order."""
        return self.low >= self.high

    def takes(self, value: Decimal) -> bool:
        """Whether a reading falls into it; infinity stands for OL."""
        return self.low <= (value, False) and (value, True) <= self.high

    def meets(self, other: "Range") -> "Range":
        """What both take in; may be empty."""
        return Range(max(self.low, other.low), min(self.high, other.high))


BOTTOM = Cut(-INFINITY, False)
TOP = Cut(INFINITY, False)
OVER = Range(TOP, Cut(INFINITY, True))
EVERYTHING = Range(BOTTOM, TOP)

Box = tuple[Range, ...]


def below(value: Decimal) -> Range:
    """Take in all that is less."""
    return Range(BOTTOM, Cut(value, False))


def above(value: Decimal) -> Range:
    """Take in all that is more."""
    return Range(Cut(value, True), TOP)


def at_most(value: Decimal) -> Range:
    """Take in the value and all that is less."""
    return Range(BOTTOM, Cut(value, True))


def at_least(value: Decimal) -> Range:
    """Take in the value and all that is more."""
    return Range(Cut(value, False), TOP)


def between(
    low: Decimal, high: Decimal, *, low_open: bool = False, high_open: bool = False
) -> Range:
    """Take in what lies between two values, with or without the ends."""
    return Range(Cut(low, low_open), Cut(high, not high_open))
