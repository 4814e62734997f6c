"""Readings that lead somewhere else after a change, each with a value as a witness.

In: a check before and after, its targets with the new names of steps. Out: `Remark`s, one for each
pair of targets.
"""

from collections.abc import Iterator

from builder.graph.reading_coverage import point_in, uncovered
from builder.graph.space import Space, space_of
from builder.model.checks import Check, Result
from builder.model.ranges import Box
from builder.review.plain_values import Names
from builder.review.remark import Remark

KIND = "reading leads elsewhere"


def moved_readings(step: str, old: Check, new: Check, names: Names) -> Iterator[Remark]:
    """Yield what a tech who reads the same as before now does."""
    before, after = space_of(old), space_of(new)
    if before is None or after is None or _axes(before) != _axes(after):
        return
    told: set[tuple[str, str]] = set()
    for was, box in zip(before.results, before.boxes, strict=True):
        for now, other in zip(after.results, after.boxes, strict=True):
            pair = _target(was, names), _target(now, {})
            if pair[0] != pair[1] and pair not in told and (value := _witness(after, box, other)):
                told.add(pair)
                message = f"`{step}`: {value} now leads to `{pair[1]}`, before to `{pair[0]}`"
                yield Remark(KIND, step, message)
        if value := _left_alone(new, after, box):
            message = f"`{step}`: {value} has no result now, before it led to"
            yield Remark("reading without result", step, f"{message} `{_target(was, names)}`")


def _axes(space: Space) -> list[tuple[str, str, object]]:
    return [(axis.name, axis.unit, axis.phrases) for axis in space.axes]


def _target(result: Result, names: Names) -> str:
    text = str(result.branch.text)
    return f"return {text}" if result.branch.returns else names.get(text, text)


def _witness(space: Space, one: Box, other: Box) -> str:
    """Return a plain reading in both boxes, in words; "" where the instruments show none."""
    sides = zip(one, other, space.domain, strict=True)
    shared = tuple(a.intersection(b).intersection(whole) for a, b, whole in sides)
    if any(side.empty for side in shared):
        return ""
    point = point_in(shared, (axis.resolution for axis in space.axes))
    if point is None:
        return ""
    pairs = zip(space.axes, point, strict=True)
    return ", ".join(axis.value_as_text(value) for axis, value in pairs)


def _left_alone(check: Check, space: Space, box: Box) -> str:
    if any(result.otherwise for result in check.results):
        return ""
    inside = tuple(a.intersection(b) for a, b in zip(box, space.domain, strict=True))
    if any(side.empty for side in inside):
        return ""
    pieces = uncovered(inside, space.boxes) or ()
    return next(filter(None, (_witness(space, piece, piece) for piece in pieces)), "")
