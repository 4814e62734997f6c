"""What a set of boxes over readings leaves uncovered, and where two of them overlap.

In: the domain of all readings and one box per result. Out: gaps and overlaps as boxes, and the
plainest value in one that the instrument can show.
"""

from bisect import bisect_left
from collections.abc import Collection, Iterable, Iterator
from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal
from itertools import accumulate, pairwise
from operator import or_

from builder.model.ranges import INFINITY, OVER, Box, Cut, Range

MAX_WORK = 200_000  # box comparisons before `uncovered` gives up; under a second on one core
MAX_DECIMALS = 12  # searched for a plain value in a gap of a reading without a resolution


def witness(gap: Range, resolution: Decimal | None) -> Decimal | None:
    """Return the plainest value in a range that the instrument can show, or None if there is none.

    It tries coarse values first (13 before 13.4 before 13.35), each time the one nearest the
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
    for exponent in range(3, -MAX_DECIMALS - 1, -1):
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
        if gap.contains(value):
            return value
    return None


def uncovered(domain: Box, boxes: Collection[Box], max_work: int = MAX_WORK) -> list[Box] | None:
    """Return the pieces of the domain that no box covers; no two of them share a point.

    The domain is halved at a face of a box, chosen so that few boxes are on both sides, until a
    piece meets no box (uncovered) or is inside one (covered). None: that would take more than
    `max_work` box comparisons, so the question is too large to answer here.
    """
    if len(domain) == 1 and _cover(domain[0], (side for (side,) in boxes)):
        return []
    sides_by_axis = zip(domain, *boxes, strict=True)
    faces = [sorted({cut for side in sides for cut in side}) for sides in sides_by_axis]
    ranks = [{cut: rank for rank, cut in enumerate(cuts)} for cuts in faces]
    whole, *ranked = (_ranked(box, ranks) for box in (domain, *boxes))
    pieces: list[Box] = []
    stack = [(whole, [box for box in ranked if _meet(whole, box)])]
    if any(low >= high for low, high in whole):
        stack.clear()
    while stack:
        piece, near = stack.pop()
        max_work -= len(near)
        if max_work < 0:
            return None
        if not near:
            pieces.append(_box(piece, faces))
        elif not any(_within(piece, box) for box in near):
            stack += _halved(piece, near)
    return pieces


def overlaps(domain: Box, boxes: Collection[Box]) -> Iterator[tuple[int, int, Box]]:
    """Yield every pair of boxes (by their order, i before j) that share a point of the domain.

    Integers serve as sets, bit i for box i: one `&` finds which of all boxes meet on an axis.
    """
    if len(domain) == 1 and _apart(side for (side,) in boxes):
        return
    inside = [
        tuple(side.intersection(cut) for side, cut in zip(domain, box, strict=True))
        for box in boxes
    ]
    solid = sum(1 << i for i, box in enumerate(inside) if not any(side.empty for side in box))
    meeting = [solid & ((1 << j) - 1) if solid >> j & 1 else 0 for j in range(len(inside))]
    for axis in range(len(domain)):
        starts = sorted((box[axis].low, i) for i, box in enumerate(inside))
        ends = sorted((box[axis].high, i) for i, box in enumerate(inside))
        started, ended = _prefix_sets(starts), _prefix_sets(ends)
        for j, box in enumerate(inside):
            meeting[j] &= started[bisect_left(starts, (box[axis].high, -1))]
            meeting[j] &= ~ended[bisect_left(ends, (box[axis].low, len(inside)))]
    for j, second in enumerate(inside):
        for i in (i for i in range(j) if meeting[j] >> i & 1):
            yield i, j, tuple(a.intersection(b) for a, b in zip(inside[i], second, strict=True))


# Most checks have one reading, and ranges that neither leave a gap nor overlap: one sort tells.
def _cover(domain: Range, sides: Iterable[Range]) -> bool:
    reached = domain.low
    for side in sorted(sides):
        if reached < side.low:
            break
        reached = max(reached, side.high)
    return reached >= domain.high


def _apart(sides: Iterable[Range]) -> bool:
    return all(one.high <= other.low for one, other in pairwise(sorted(sides)))


def _prefix_sets(ordered: list[tuple[Cut, int]]) -> list[int]:
    """Return the sets of the first 0, 1, 2 ... boxes of a list."""
    return list(accumulate((1 << i for _, i in ordered), or_, initial=0))


# Boxes by the ranks of their cuts: integers compare faster than decimals.
_Ranked = tuple[tuple[int, int], ...]


def _ranked(box: Box, ranks: list[dict[Cut, int]]) -> _Ranked:
    return tuple((rank[side.low], rank[side.high]) for side, rank in zip(box, ranks, strict=True))


def _box(ranked: _Ranked, faces: list[list[Cut]]) -> Box:
    return tuple(Range(cuts[a], cuts[b]) for (a, b), cuts in zip(ranked, faces, strict=True))


def _meet(one: _Ranked, other: _Ranked) -> bool:
    return all(a < d and c < b for (a, b), (c, d) in zip(one, other, strict=True))


def _within(piece: _Ranked, box: _Ranked) -> bool:
    return all(c <= a and b <= d for (a, b), (c, d) in zip(piece, box, strict=True))


def _halved(piece: _Ranked, near: list[_Ranked]) -> list[tuple[_Ranked, list[_Ranked]]]:
    """Cut a piece in two, at the middle face of the axis where the larger half meets fewest."""
    best: tuple[int, list[tuple[_Ranked, list[_Ranked]]]] | None = None
    for axis, (low, high) in enumerate(piece):
        faces = sorted(cut for box in near for cut in box[axis] if low < cut < high)
        if not faces:
            continue
        cut = faces[len(faces) // 2]
        under = [box for box in near if box[axis][0] < cut]
        over = [box for box in near if cut < box[axis][1]]
        if best is None or max(len(under), len(over)) < best[0]:
            upper = (*piece[:axis], (cut, high), *piece[axis + 1 :])
            lower = (*piece[:axis], (low, cut), *piece[axis + 1 :])
            best = max(len(under), len(over)), [(upper, over), (lower, under)]
    assert best is not None  # a box that meets the piece without containing it has a face in it
    return best[1]


def point_in(box: Box, resolutions: Iterable[Decimal | None]) -> tuple[Decimal, ...] | None:
    """Return a plain point of a box that the instruments can show, or None if there is none."""
    values = [witness(side, fine) for side, fine in zip(box, resolutions, strict=True)]
    if any(value is None for value in values):
        return None
    return tuple(value for value in values if value is not None)
