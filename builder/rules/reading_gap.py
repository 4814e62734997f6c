"""A reading that no result of its check takes: a value between two ranges, beyond the last one, or
a combination of several readings. Gaps finer than the reading's `resolution` are none. Of a maker's
figure: one of the ways to compare with it is left out.

Why: Whoever reads that value at the vehicle has nowhere to go.

Wrong:

    running:
      check: Voltage across the battery posts
      when: [engine at 1500 rpm]
      reading: {unit: V, from: 0, to: 20, resolution: 0.01, origin: common practice}
      results:
        - {result: below 13.2, branch: repair}
        - {result: 13.4 to 20, branch: all-good}

Right:

    running:
      check: Voltage across the battery posts
      when: [engine at 1500 rpm]
      reading: {unit: V, from: 0, to: 20, resolution: 0.01, origin: common practice}
      results:
        - {result: below 13.2, branch: repair}
        - {result: 13.2 to 20, branch: all-good}

Fix: Let one range start where the other ends, `below 13.2` and `13.2 to 20`: `below` leaves the
end out, `to` takes it in.
"""

from collections.abc import Iterator

from builder.graph.coverage import uncovered
from builder.graph.space import Space, range_as_text
from builder.model.finding import Finding, Related, Severity
from builder.model.ranges import Box, Range
from builder.model.tree import Check, Result, Step
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.witnesses import example_reading, example_readings

RULE = Rule(
    name="reading-gap",
    family=Family.READINGS,
    severity=Severity.ERROR,
    summary="A reading that no result takes.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every gap of a reading, and one for all gaps of several readings."""
    for step in facts.steps:
        space = facts.spaces.get(step.id)
        if space and space.results and not _takes_the_rest(step):
            yield from _gaps(step, space)


def _takes_the_rest(step: Step) -> bool:
    return isinstance(step.body, Check) and any(one.otherwise for one in step.body.results)


def _gaps(step: Step, space: Space) -> Iterator[Finding]:
    pieces = uncovered(space.domain, space.boxes)
    if pieces is None:
        yield _too_large(step)
    elif len(space.axes) == 1:
        for (gap,) in sorted(pieces):
            if point := example_reading(space, (gap,)):
                yield _gap(space, gap, point)
    elif points := example_readings(space, sorted(pieces)):
        yield _combinations(space, sorted(pieces), points)


def _gap(space: Space, gap: Range, point: str) -> Finding:
    under = [
        (box[0].high, place) for place, box in enumerate(space.boxes) if box[0].high <= gap.low
    ]
    over = [(box[0].low, place) for place, box in enumerate(space.boxes) if gap.high <= box[0].low]
    below = space.results[max(under)[1]] if under else None
    above = space.results[min(over)[1]] if over else None
    here = below or space.results[0]
    next_up = above if above is not here else None
    related = [Related(next_up.said.at, "the next range upward")] if next_up else []
    if space.axes[0].phrases:
        hint = _hint_for_phrase(point)
    elif below and above:
        upper = space.boxes[space.results.index(above)][0]
        lower = space.boxes[space.results.index(below)][0]
        domain = space.axes[0].domain
        downward = range_as_text(Range(gap.low, upper.high), domain)
        upward = range_as_text(Range(lower.low, gap.high), domain)
        hint = (
            f"let the two ranges meet: `{downward}` in place of `{above.said}`, "
            f"or `{upward}` in place of `{below.said}`"
        )
    else:
        hint = f"add a result for it: `{range_as_text(gap, space.axes[0].domain)}`"
    return _finding(here, point, hint, *related)


def _hint_for_phrase(point: str) -> str:
    if point == "a reading exactly at the figure":
        return "write `at most the figure` beside `above`, or `at least` beside `below the figure`"
    return f"add a result `{point.removeprefix('a reading ')}`"


def _combinations(space: Space, pieces: list[Box], points: list[str]) -> Finding:
    touching = [
        result
        for result, box in zip(space.results, space.boxes, strict=True)
        if _touch(box, pieces[0])
    ] or [space.results[0]]
    here, *others = touching
    hint = "widen a result beside it, or add one"
    related = [Related(other.said.at, "also beside the gap") for other in others]
    return _finding(here, "; or ".join(points), hint, *related)


def _touch(box: Box, gap: Box) -> bool:
    """Whether a box shares a face with a gap: side by side on one axis, level on all others."""
    sides = list(zip(box, gap, strict=True))
    apart = [(side, hole) for side, hole in sides if side.meets(hole).empty]
    return len(apart) == 1 and any(low.high == high.low for low, high in (*apart, apart[0][::-1]))


def _finding(here: Result, point: str, hint: str, *related: Related) -> Finding:
    return RULE.finding(
        here.said.at,
        f"no result takes {point}",
        f"a technician who reads {point.removeprefix('a reading ')} has nowhere to go",
        hint,
        *related,
    )


def _too_large(step: Step) -> Finding:
    return RULE.finding(
        step.id.at,
        f"`{step.id}` has too many results over too many readings to be proved complete",
        "nobody can tell whether every reading has somewhere to go",
        "split it into several checks, one for a few readings each",
    )
