"""A reading that two results of one check take. Ranges may share no value, not even an end; where
more than one result can be true on purpose, the check says `several: first fits`.

Why: Whoever reads that value has two ways on and has to guess.

Wrong:

    running:
      check: Voltage across the battery posts
      when: [engine at 1500 rpm]
      reading: {unit: V, from: 0, to: 20, resolution: 0.01, origin: common practice}
      results:
        - {result: at most 13.2, branch: repair}
        - {result: 13.2 to 20, branch: all-good}

Right:

    running:
      check: Voltage across the battery posts
      when: [engine at 1500 rpm]
      reading: {unit: V, from: 0, to: 20, resolution: 0.01, origin: common practice}
      results:
        - {result: below 13.2, branch: repair}
        - {result: 13.2 to 20, branch: all-good}

Fix: Leave the shared end out of one range with `below` or `above`, or pull the ranges apart.
"""

from collections import defaultdict
from collections.abc import Iterator

from builder.graph.coverage import overlaps
from builder.graph.space import Space, range_as_text
from builder.model.finding import Finding, Related, Severity
from builder.model.ranges import Box, Range
from builder.model.tree import Check
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.witnesses import MAX_EXAMPLES, example_readings

RULE = Rule(
    name="reading-overlap",
    family=Family.READINGS,
    severity=Severity.ERROR,
    summary="A reading that two results take.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every result that takes what one above it takes already."""
    for step in facts.steps:
        space = facts.spaces.get(step.id)
        if space and not (isinstance(step.body, Check) and step.body.several):
            yield from _shared(space)


def _shared(space: Space) -> Iterator[Finding]:
    found: dict[int, list[tuple[int, Box]]] = defaultdict(list)
    for first, second, box in overlaps(space.domain, space.boxes):
        if len(found[second]) < MAX_EXAMPLES:
            found[second].append((first, box))
    for second, others in found.items():
        points = example_readings(space, [box for _, box in others])
        if points:
            yield _finding(space, second, [first for first, _ in others], points)


def _finding(space: Space, second: int, firsts: list[int], points: list[str]) -> Finding:
    here = space.results[second]
    shown = "; or ".join(points)
    others = " and ".join(f"`{space.results[first].said}`" for first in firsts)
    return RULE.finding(
        here.said.at,
        f"`{here.said}` takes {shown}, and so does {others}",
        f"a technician who reads {points[0].removeprefix('a reading ')} has two ways on",
        _hint(space, firsts[0], second),
        *(Related(space.results[first].said.at, "takes it already") for first in firsts),
    )


def _hint(space: Space, first: int, second: int) -> str:
    """Offer the range cut off at the other's end, where one of them lies below the other."""
    hint = "pull the ranges apart, or say `several: first fits` if both may be true"
    if len(space.axes) > 1 or space.axes[0].phrases:
        return hint
    (one,), (other,) = space.boxes[first], space.boxes[second]
    domain = space.axes[0].domain
    if one.low < other.low and one.high < other.high:
        rest = Range(one.high, other.high), Range(one.low, other.low)
    elif other.low < one.low and other.high < one.high:
        rest = Range(other.low, one.low), Range(other.high, one.high)
    else:
        return hint
    here, there = (range_as_text(part, domain) for part in rest)
    results = space.results[second].said, space.results[first].said
    return (
        f"let the two ranges meet: `{here}` in place of `{results[0]}`, "
        f"or `{there}` in place of `{results[1]}`"
    )
