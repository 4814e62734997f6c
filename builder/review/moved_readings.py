"""Readings that lead somewhere else after a change, each with a value as a witness.

In: a check before and after, its targets with the new names of steps. Out: `Remark`s, one for each
pair of targets. Where a reading fits several results the first counts, as on a walk.
"""

from collections.abc import Iterator
from itertools import product
from typing import NamedTuple

from builder.graph.reading_coverage import uncovered
from builder.graph.space import Space, space_of
from builder.model.checks import Check, Result
from builder.model.ranges import Box
from builder.review.plain_values import Names
from builder.review.remark import Remark, in_code
from builder.rules.shared.witnesses import example_reading

KIND = "reading leads elsewhere"


class _Piece(NamedTuple):
    """Some of the readings that a result takes."""

    target: str
    box: Box


def moved_readings(step: str, old: Check, new: Check, names: Names) -> Iterator[Remark]:
    """Yield what a tech who reads the same as before now does."""
    before, after = space_of(old), space_of(new)
    if before is None or after is None or _axes(before) != _axes(after):
        return
    was, now = list(_taken(old, before, names)), list(_taken(new, after, {}))
    told: set[tuple[str, str]] = set()
    for one, other in product(was, now):
        pair = other.target, one.target
        if pair[0] == pair[1] or pair in told:
            continue
        if value := _reading_in(after, one.box, other.box):
            told.add(pair)
            leads = f"now leads to {in_code(pair[0])}, before to {in_code(pair[1])}"
            yield Remark(KIND, step, f"{in_code(step)}: {value} {leads}")
    yield from _left_alone(step, was, now, after)


def _axes(space: Space) -> list[tuple[str, str, object]]:
    return [(axis.name, axis.unit, axis.phrases) for axis in space.axes]


def _taken(check: Check, space: Space, names: Names) -> Iterator[_Piece]:
    """Yield what each result takes of the readings that none above it takes."""
    boxes = dict(zip(map(id, space.results), space.boxes, strict=True))
    above: list[Box] = []
    for result in check.results:
        box = space.domain if result.otherwise else boxes.get(id(result))
        unclear = not (result.ranges or result.otherwise or check.figure)
        if box is None or unclear:
            continue  # nothing is shown, or its words are no range of this reading
        inside = _both(box, space.domain)
        for piece in uncovered(inside, above) or ():
            yield _Piece(_target(result, names), piece)
        above.append(inside)


def _both(one: Box, other: Box) -> Box:
    return tuple(a.intersection(b) for a, b in zip(one, other, strict=True))


def _target(result: Result, names: Names) -> str:
    text = str(result.branch.text)
    return f"return {text}" if result.branch.returns else names.get(text, text)


def _reading_in(space: Space, one: Box, other: Box) -> str:
    """Return a plain reading in both boxes, in words; "" where the instruments show none."""
    shared = _both(_both(one, other), space.domain)
    value = None if any(side.empty for side in shared) else example_reading(space, shared)
    return (value or "").replace("`", "'")


def _left_alone(step: str, was: list[_Piece], now: list[_Piece], space: Space) -> Iterator[Remark]:
    """Yield for each target of before a reading that no result takes any more."""
    told: set[str] = set()
    for one in was:
        inside = _both(one.box, space.domain)
        if one.target in told or any(side.empty for side in inside):
            continue
        pieces = uncovered(inside, [piece.box for piece in now]) or ()
        value = next(filter(None, (_reading_in(space, piece, piece) for piece in pieces)), "")
        if value:
            told.add(one.target)
            led = f"has no result now, before it led to {in_code(one.target)}"
            yield Remark("reading without result", step, f"{in_code(step)}: {value} {led}")
