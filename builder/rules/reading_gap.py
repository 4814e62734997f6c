"""A reading that no result of its check covers: a value between two ranges, a value beyond the last
one, or a combination of several readings. Gaps finer than the reading's `resolution` don't count.
For a maker's spec: a comparison with it that has no result.

Why: A tech who reads that value is stuck.

Wrong:

    running:
      check: Measure voltage across the battery posts
      when: [engine at 1500 rpm]
      reading: {unit: V, from: 0, to: 20, resolution: 0.01, origin: common practice}
      results:
        - {result: below 13.2, branch: repair}
        - {result: 13.4 to 20, branch: all-good}

Right:

    running:
      check: Measure voltage across the battery posts
      when: [engine at 1500 rpm]
      reading: {unit: V, from: 0, to: 20, resolution: 0.01, origin: common practice}
      results:
        - {result: below 13.2, branch: repair}
        - {result: 13.2 to 20, branch: all-good}

Fix: Start one range where the other ends, `below 13.2` and `13.2 to 20`: `below` leaves the end
out, `to` includes it.
"""

from collections.abc import Iterator
from dataclasses import replace

from builder.graph.reading_coverage import uncovered
from builder.graph.space import Space, is_one_step, range_as_text
from builder.model.checks import Check, Result
from builder.model.finding import Edit, Finding, Related, Severity, edit_of
from builder.model.ranges import Box, Range
from builder.model.tree import Step
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.witnesses import example_reading, example_readings

RULE = Rule(
    name="reading-gap",
    family=Family.READINGS,
    severity=Severity.ERROR,
    summary="A reading that no result covers.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every gap of a reading, and one for all gaps of several readings."""
    for step in facts.steps:
        space = facts.spaces.get(step.id)
        if space and space.results and not (_has_otherwise(step) or _is_spec(step)):
            yield from _gaps(step, space)


def _has_otherwise(step: Step) -> bool:
    return isinstance(step.body, Check) and any(result.otherwise for result in step.body.results)


def _is_spec(step: Step) -> bool:
    """Whether the one reading has a spec: then the rule on its results says what is missing."""
    body = step.body
    return isinstance(body, Check) and [bool(one.spec) for one in body.readings] == [True]


def _gaps(step: Step, space: Space) -> Iterator[Finding]:
    pieces = uncovered(space.domain, space.boxes)
    if pieces is None:
        yield _too_large(step)
    elif len(space.axes) == 1:
        for (gap,) in sorted(pieces):
            if reading := example_reading(space, (gap,)):
                yield _gap(space, gap, reading)
    elif readings := example_readings(space, sorted(pieces)):
        yield _combinations(space, sorted(pieces), readings)


def _gap(space: Space, gap: Range, reading: str) -> Finding:
    sides = [box[0] for box in space.boxes]
    under = [(side.high, place) for place, side in enumerate(sides) if side.high <= gap.low]
    over = [(side.low, place) for place, side in enumerate(sides) if gap.high <= side.low]
    below = max(under)[1] if under else None
    above = min(over)[1] if over else None
    here = (below or 0) if above is None else above
    related = []
    if below is not None and below != here:
        related = [Related(space.results[below].text.at, "the next range down")]
    edit = None
    if space.axes[0].phrases:
        hint = _hint_for_phrase(reading)
    elif below is not None and above is not None:
        hint, edit = _hint_to_close(space, gap, below, above)
    else:
        hint = f"add a result for it: `{range_as_text(gap, space.axes[0].domain)}`"
    finding = _finding(space.results[here], reading, hint, *related)
    return replace(finding, message=f"no result covers {_extent(space, gap, reading)}", edit=edit)


def _extent(space: Space, gap: Range, reading: str) -> str:
    """Write a gap as far as it goes, so that no one closes only a part of it."""
    axis = space.axes[0]
    if axis.phrases or is_one_step(gap, axis.resolution) or gap.high.value.is_infinite():
        return reading
    return f"{axis.name} {range_as_text(gap, axis.domain)} {axis.unit}".strip()


def _hint_for_phrase(reading: str) -> str:
    if reading == "a reading exactly at the figure":
        return "write `at most the figure` beside `above`, or `at least` beside `below the figure`"
    return f"add a result `{reading.removeprefix('a reading ')}`"


def _hint_to_close(space: Space, gap: Range, below: int, above: int) -> tuple[str, Edit | None]:
    """Offer the range above stretched down to the gap's start, or the one below to its end.

    Where the gap is one step of the reading, the range above is meant: its start is left out.
    """
    domain = space.axes[0].domain
    lower, upper = space.boxes[below][0], space.boxes[above][0]
    downward = range_as_text(Range(gap.low, upper.high), domain)
    upward = range_as_text(Range(lower.low, gap.high), domain)
    hint = (
        f"close the gap: change `{space.results[above].text}` to `{downward}`, "
        f"or `{space.results[below].text}` to `{upward}`"
    )
    is_step = is_one_step(gap, space.axes[0].resolution)
    return hint, edit_of(space.results[above].text, downward) if is_step else None


def _combinations(space: Space, pieces: list[Box], readings: list[str]) -> Finding:
    touching = [
        result
        for result, box in zip(space.results, space.boxes, strict=True)
        if _touch(box, pieces[0])
    ] or [space.results[0]]
    here, *others = touching
    hint = f"widen a result next to it, or add `- result: {_ranges_of(space, pieces[0])}`"
    related = [Related(other.text.at, "also next to the gap") for other in others]
    return _finding(here, "; or ".join(readings), hint, *related)


def _ranges_of(space: Space, piece: Box) -> str:
    """Write the ranges of a piece as a result; a reading that may be anything is left out."""
    sides = [
        f"{axis.name}: {axis.side_as_text(side).split(' or ')[0]}"
        for axis, side in zip(space.axes, piece, strict=True)
        if side != axis.domain
    ]
    return f"{{{', '.join(sides)}}}"


def _touch(box: Box, gap: Box) -> bool:
    """Whether a box shares a face with a gap: adjacent on one axis, overlapping on all others."""
    sides = list(zip(box, gap, strict=True))
    apart = [(side, hole) for side, hole in sides if side.intersection(hole).empty]
    return len(apart) == 1 and any(low.high == high.low for low, high in (*apart, apart[0][::-1]))


def _finding(here: Result, reading: str, hint: str, *related: Related) -> Finding:
    return RULE.finding(
        here.text.at,
        f"no result covers {reading}",
        f"a tech who reads {reading.removeprefix('a reading ')} is stuck",
        hint,
        *related,
    )


def _too_large(step: Step) -> Finding:
    return RULE.finding(
        step.id.at,
        f"`{step.id}` has too many results over too many readings to check for gaps",
        "nobody can tell whether a result covers every reading",
        "split it into several checks with a few readings each",
    )
