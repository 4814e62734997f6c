"""Exact ranges of readings: what they take in, what they leave out, where two of them meet.

In: ends as Decimals, open or closed. Out: gaps and overlaps with a value that falls into them.

A range is kept as two cuts of the number line. A cut lies just before or just after a value, so
open and closed ends need no cases of their own: `12.2 to 12.6` runs from the cut before 12.2 to the
cut after 12.6, and `below 12.2` ends at the cut before 12.2. Over the instrument's range (OL) is
the stretch between the cut before and the cut after infinity.
"""

from collections.abc import Iterable, Iterator
from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal
from itertools import combinations
from typing import NamedTuple

INFINITY = Decimal("Infinity")
FINEST = 12  # decimals searched for a plain value in a gap of a reading without a resolution


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


def witness(gap: Range, resolution: Decimal | None) -> Decimal | None:
    """Return the plainest value in a range that the instrument can show, or None if there is none.

    Coarse values are tried first (13 before 13.4 before 13.35), each time the one nearest the
    middle; a value counts only if it is a multiple of the resolution.
    """
    if gap.empty:
        return None
    if gap.high == OVER.high:
        return INFINITY
    for step in _steps(resolution):
        value = _nearest_middle(gap, step)
        if value is not None and (resolution is None or value % resolution == 0):
            return value
    return None


def _steps(resolution: Decimal | None) -> Iterator[Decimal]:
    for exponent in range(3, -FINEST - 1, -1):
        step = Decimal(1).scaleb(exponent)
        if resolution is not None and step < resolution:
            break
        yield step
    if resolution is not None:
        yield resolution


def _nearest_middle(gap: Range, step: Decimal) -> Decimal | None:
    low = None if gap.low.value.is_infinite() else gap.low.value
    high = None if gap.high.value.is_infinite() else gap.high.value
    if low is None or high is None:
        ends = (high if high is not None else low) or Decimal(0)
        middle = ends - step if high is not None else ends + step
    else:
        middle = (low + high) / 2
    floor = (middle / step).to_integral_value(ROUND_FLOOR) * step
    ceiling = (middle / step).to_integral_value(ROUND_CEILING) * step
    for value in sorted({floor, ceiling}, key=lambda near: (abs(near - middle), near)):
        if gap.takes(value):
            return value
    return None


def uncovered(domain: Box, boxes: Iterable[Box], most: int = 20_000) -> list[Box] | None:
    """Cut the boxes out of the domain; what is left is taken by no result.

    Each box cuts what is still uncovered at its own faces. None: more than `most` pieces, so the
    question is too large to answer here.
    """
    left = [] if any(side.empty for side in domain) else [domain]
    for box in boxes:
        left = [piece for old in left for piece in _outside(old, box)]
        if len(left) > most:
            return None
    return left


def _outside(piece: Box, box: Box) -> Iterator[Box]:
    shared = tuple(side.meets(cut) for side, cut in zip(piece, box, strict=True))
    if any(side.empty for side in shared):
        yield piece
        return
    for axis, side in enumerate(piece):
        for rest in (Range(side.low, shared[axis].low), Range(shared[axis].high, side.high)):
            if not rest.empty:
                yield (*shared[:axis], rest, *piece[axis + 1 :])


def overlaps(domain: Box, boxes: Iterable[Box]) -> Iterator[tuple[int, int, Box]]:
    """Yield every pair of boxes (by their order) that share something inside the domain."""
    inside = [
        tuple(side.meets(cut) for side, cut in zip(domain, box, strict=True)) for box in boxes
    ]
    for (i, first), (j, second) in combinations(enumerate(inside), 2):
        shared = tuple(a.meets(b) for a, b in zip(first, second, strict=True))
        if not any(side.empty for side in shared):
            yield i, j, shared


def point_in(box: Box, resolutions: Iterable[Decimal | None]) -> tuple[Decimal, ...] | None:
    """Return a plain point of a box that the instruments can show, or None if there is none."""
    values = [witness(side, fine) for side, fine in zip(box, resolutions, strict=True)]
    if any(value is None for value in values):
        return None
    return tuple(value for value in values if value is not None)
