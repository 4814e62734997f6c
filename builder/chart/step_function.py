"""A height that falls by steps as its width grows, measured at few widths.

In: how to measure at one width. Out: the measure at any width. Wider is never higher, so what is
equal at two widths is equal at every width between them; a search for the best width, which tries
hundreds, measures a few dozen times.
"""

from bisect import bisect_left
from collections.abc import Callable
from typing import Generic, TypeVar

T = TypeVar("T")


class StepFunction(Generic[T]):
    """A measure as a function of the width; it grows as it is asked."""

    __slots__ = ("_measure", "_values", "_widths")

    def __init__(self, measure: Callable[[float], T]) -> None:
        """Take how to measure at one width."""
        self._measure = measure
        self._widths: list[float] = []
        self._values: list[T] = []

    def __call__(self, width: float) -> T:
        """Return the measure at a width."""
        widths, values = self._widths, self._values
        at = bisect_left(widths, width)
        if at == len(widths):
            return self._add(at, width)
        if widths[at] == width or (at and values[at - 1] is values[at]):
            return values[at]
        return self._add(at, width)

    def _add(self, at: int, width: float) -> T:
        """Measure, and keep one object for equal measures of neighbors."""
        value = self._measure(width)
        for known in self._values[max(at - 1, 0) : at + 1]:
            if known == value:
                value = known
        self._widths.insert(at, width)
        self._values.insert(at, value)
        return value
