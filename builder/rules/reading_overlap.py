"""A reading that two results of one check cover. Ranges may share no value, not even an end. Where
more than one result can be true on purpose, the check says `several: first fits`.

Why: The tech who reads that value has to guess which way to go.

Wrong:

    running:
      check: Measure voltage across the battery posts
      when: [engine at 1500 rpm]
      reading: {unit: V, from: 0, to: 20, resolution: 0.01, origin: common practice}
      results:
        - {result: at most 13.2, branch: repair}
        - {result: 13.2 to 20, branch: all-good}

Right:

    running:
      check: Measure voltage across the battery posts
      when: [engine at 1500 rpm]
      reading: {unit: V, from: 0, to: 20, resolution: 0.01, origin: common practice}
      results:
        - {result: below 13.2, branch: repair}
        - {result: 13.2 to 20, branch: all-good}

Fix: Leave the shared end out of one range with `below` or `above`, or move the ranges apart.
"""

from collections import defaultdict
from collections.abc import Iterator

from builder.graph.reading_coverage import overlaps
from builder.graph.space import Space, is_one_step, range_as_text
from builder.model.checks import Check
from builder.model.finding import Edit, Finding, Related, Severity, edit_of
from builder.model.ranges import Box, Range
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.witnesses import MAX_EXAMPLES, example_readings

RULE = Rule(
    name="reading-overlap",
    family=Family.READINGS,
    severity=Severity.ERROR,
    summary="A reading that two results cover.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every result that covers what a result above it covers."""
    for step in facts.steps:
        space = facts.spaces.get(step.id)
        if space and not (isinstance(step.body, Check) and step.body.several):
            yield from _shared(space)


def _shared(space: Space) -> Iterator[Finding]:
    shared: dict[int, list[tuple[int, Box]]] = defaultdict(list)
    for first, second, box in overlaps(space.domain, space.boxes):
        if len(shared[second]) < MAX_EXAMPLES:
            shared[second].append((first, box))
    for second, others in shared.items():
        readings = example_readings(space, [box for _, box in others])
        if readings:
            yield _finding(space, second, [first for first, _ in others], readings)


def _finding(space: Space, second: int, firsts: list[int], readings: list[str]) -> Finding:
    here = space.results[second]
    others = " and ".join(f"`{space.results[first].text}`" for first in firsts)
    both = "both" if len(firsts) == 1 else "all"
    return RULE.finding(
        here.text.at,
        f"`{here.text}` and {others} {both} match {'; or '.join(readings)}",
        f"a tech who reads {readings[0].removeprefix('a reading ')} can't tell which way to go",
        _hint(space, firsts[0], second),
        *(Related(space.results[first].text.at, "also matches it") for first in firsts),
        edit=_edit(space, firsts[0], second) if len(firsts) == 1 else None,
    )


def _hint(space: Space, first: int, second: int) -> str:
    """Offer each range cut off at the other's end, where one of them is below the other."""
    hint = "move the ranges apart, or write `several: first fits` if both may be true"
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
    return (
        f"make the ranges meet: change `{space.results[second].text}` to `{here}`, "
        f"or `{space.results[first].text}` to `{there}`"
    )


def _edit(space: Space, first: int, second: int) -> Edit | None:
    """Return the edit that leaves a shared end to the range above, if one step is shared."""
    if len(space.axes) > 1 or space.axes[0].phrases:
        return None
    axis = space.axes[0]
    under, over = sorted((first, second), key=lambda place: space.boxes[place][0])
    (lower,), (upper,) = space.boxes[under], space.boxes[over]
    apart = lower.low < upper.low and lower.high < upper.high
    if not apart or not is_one_step(lower.intersection(upper), axis.resolution):
        return None
    rest = range_as_text(Range(lower.low, upper.low), axis.domain)
    return edit_of(space.results[under].text, rest)
