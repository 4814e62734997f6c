"""How a reading can compare with a spec (`figure`) that is looked up at the vehicle.

In: nothing. Out: for each kind of spec the words of a result, and the places they cover: 0 below
the spec, 1 within a band or exactly at a limit, 2 above it.
"""

from collections.abc import Mapping
from decimal import Decimal
from enum import StrEnum

from builder.model.ranges import Range, between


class FigureKind(StrEnum):
    """The form of a spec: a low and a high end, or one limit."""

    BAND = "band"
    LIMIT = "limit"


def _places(low: int, high: int) -> Range:
    return between(Decimal(low), Decimal(high))


COMPARISONS: Mapping[FigureKind, Mapping[str, Range]] = {
    FigureKind.BAND: {
        "below the figure": _places(0, 0),
        "within the figure": _places(1, 1),
        "above the figure": _places(2, 2),
    },
    FigureKind.LIMIT: {
        "at most the figure": _places(0, 1),
        "above the figure": _places(2, 2),
        "below the figure": _places(0, 0),
        "at least the figure": _places(1, 2),
    },
}
NOTHING_SHOWN = "none"
SPEC_WORDS = ("below spec", "within spec", "above spec", NOTHING_SHOWN)
PLACES: Mapping[FigureKind, tuple[str, ...]] = {
    FigureKind.BAND: ("below the figure", "within the figure", "above the figure"),
    FigureKind.LIMIT: ("below the figure", "exactly at the figure", "above the figure"),
}
