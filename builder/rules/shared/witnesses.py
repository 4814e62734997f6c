"""Readings that show an author what was overlooked.

In: a `Space` and a piece of it. Out: a plain point of the piece that the instruments can show, in
words. A piece that no readings can reach, because a sum of them cannot lie there, has none.
"""

from collections.abc import Iterator
from decimal import Decimal
from itertools import islice, product

from builder.graph.coverage import point_in, witness
from builder.graph.space import Space
from builder.model.ranges import Box, Range, between
from builder.trade.expressions import bounds_of_expression, evaluate_expression
from builder.trade.mistake import Mistake

MOST_POINTS = 5  # shown in one finding
MOST_TRIES = 200  # points tried until the sums come out inside a piece


def shown_points(space: Space, pieces: list[Box]) -> list[str]:
    """Return a point of each piece in words, of up to five of them."""
    points = (point for piece in pieces if (point := shown_point(space, piece)))
    return list(islice(points, MOST_POINTS))


def shown_point(space: Space, piece: Box) -> str | None:
    """Return a point of a piece in words, or None where the instruments can show none."""
    point = point_in(piece, (axis.resolution for axis in space.axes))
    if point is None or not _possible(space, piece):
        return None
    if any(axis.formula for axis in space.axes):
        point = next(_true_points(space, piece), point)
    return ", ".join(axis.shown(value) for axis, value in zip(space.axes, point, strict=True))


def _possible(space: Space, piece: Box) -> bool:
    """Whether every sum can come out in its side of the piece."""
    known = {
        axis.name: (side.low.value, side.high.value)
        for axis, side in zip(space.axes, piece, strict=True)
    }
    for axis, side in zip(space.axes, piece, strict=True):
        found = bounds_of_expression(axis.formula, known) if axis.formula else None
        if isinstance(found, tuple) and between(*found).meets(side).empty:
            return False
    return True


def _true_points(space: Space, piece: Box) -> Iterator[tuple[Decimal, ...]]:
    """Yield points of a piece whose sums are what the readings beside them come to."""
    sides = list(zip(space.axes, piece, strict=True))
    choices = [
        [None] if axis.formula else list(_spread(side, axis.resolution)) for axis, side in sides
    ]
    for tried in islice(product(*choices), MOST_TRIES):
        values: dict[str, Decimal] = {}
        for (axis, side), value in zip(sides, tried, strict=True):
            found = evaluate_expression(axis.formula, values) if axis.formula else value
            if found is None or isinstance(found, Mistake) or not side.takes(found):
                break
            values[axis.name] = found
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
