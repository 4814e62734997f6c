"""Example readings that show an author what is missing.

In: a `Space` and a piece of it. Out: a plain point of the piece that the instruments can show, as
text. A piece that no readings can reach, because a computed reading can't be there, has none.
"""

from collections.abc import Iterator
from decimal import Decimal
from itertools import islice, product

from builder.graph.reading_coverage import point_in, witness
from builder.graph.space import Space
from builder.model.ranges import Box, Range, between
from builder.trade.expressions import bounds_of_expression, evaluate_expression
from builder.trade.mistake import Mistake

MAX_EXAMPLES = 5  # in one finding
MAX_TRIES = 200  # points tried until the computed readings are inside a piece


def example_readings(space: Space, pieces: list[Box]) -> list[str]:
    """Return a point of each piece as text, of up to five of them."""
    points = (point for piece in pieces if (point := example_reading(space, piece)))
    return list(islice(points, MAX_EXAMPLES))


def example_reading(space: Space, piece: Box) -> str | None:
    """Return a point of a piece as text, or None where the instruments can show none.

    Where no readings are found from which the computed ones follow, only those are named.
    """
    point = point_in(piece, (axis.resolution for axis in space.axes))
    if point is None or not _possible(space, piece):
        return None
    shown = list(zip(space.axes, point, strict=True))
    computed = [(axis, value) for axis, value in shown if axis.formula]
    if computed:
        consistent = next(_consistent_points(space, piece), None)
        shown = list(zip(space.axes, consistent, strict=True)) if consistent else computed
    return ", ".join(axis.value_as_text(value) for axis, value in shown)


def _possible(space: Space, piece: Box) -> bool:
    """Whether every computed reading can be inside its side of the piece."""
    known = {
        axis.name: (side.low.value, side.high.value)
        for axis, side in zip(space.axes, piece, strict=True)
    }
    for axis, side in zip(space.axes, piece, strict=True):
        bounds = bounds_of_expression(axis.formula, known) if axis.formula else None
        if isinstance(bounds, tuple) and between(*bounds).intersection(side).empty:
            return False
    return True


def _consistent_points(space: Space, piece: Box) -> Iterator[tuple[Decimal, ...]]:
    """Yield points of a piece in which every computed reading follows from the others."""
    sides = list(zip(space.axes, piece, strict=True))
    choices = [
        [None] if axis.formula else list(_spread(side, axis.resolution)) for axis, side in sides
    ]
    for point in islice(product(*choices), MAX_TRIES):
        values: dict[str, Decimal] = {}
        for (axis, side), chosen in zip(sides, point, strict=True):
            value = evaluate_expression(axis.formula, values) if axis.formula else chosen
            if value is None or isinstance(value, Mistake) or not side.contains(value):
                break
            values[axis.name] = value
        else:
            yield tuple(values.values())


def _spread(side: Range, resolution: Decimal | None) -> Iterator[Decimal]:
    """Yield plain values from the middle, the lower and the upper part of a side."""
    if side.low.value.is_infinite() or side.high.value.is_infinite():
        parts = [side]
    else:
        third = (side.high.value - side.low.value) / 3
        low, high = side.low.value + third, side.high.value - third
        parts = [side, side._replace(high=side.low._replace(value=low)),
                 side._replace(low=side.high._replace(value=high))]  # fmt: skip
    for part in parts:
        value = witness(part, resolution)
        if value is not None and not value.is_infinite():
            yield value
