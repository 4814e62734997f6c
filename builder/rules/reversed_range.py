"""A range whose ends stand in the wrong order, a reading that begins above its own end, or a result
that lies outside what the reading can be.

Why: No reading ever falls into it, so its branch is never taken.

Wrong:

    running:
      check: Voltage across the battery posts
      when: [engine at 1500 rpm]
      reading: {unit: V, from: 0, to: 20, resolution: 0.01, origin: common practice}
      results:
        - {result: below 13, branch: repair}
        - {result: 14 to 13, branch: all-good}
        - {result: above 14, branch: repair}

Right:

    running:
      check: Voltage across the battery posts
      when: [engine at 1500 rpm]
      reading: {unit: V, from: 0, to: 20, resolution: 0.01, origin: common practice}
      results:
        - {result: below 13, branch: repair}
        - {result: 13 to 14, branch: all-good}
        - {result: above 14, branch: repair}

Fix: Write the lower end first; keep results between the `from` and the `to` of the reading.
"""

from collections.abc import Iterable, Iterator

from builder.graph.space import domain_of, range_as_text, with_ends_in_order
from builder.model.finding import Finding, Severity
from builder.model.ranges import Range
from builder.model.tree import Check, Reading, Result
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="reversed-range",
    family=Family.READINGS,
    severity=Severity.ERROR,
    summary="A range into which no reading can fall.",
)
WHY = "no reading falls into it, so nobody ever takes that way"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every range that is empty or lies outside its reading."""
    for step in facts.steps:
        if isinstance(step.body, Check):
            for reading in step.body.readings:
                yield from _reading(step.body, reading)
    for space in facts.spaces.values():
        for axis in space.axes:
            if axis.formula:
                low, high = (float(end.value) for end in axis.domain)
                can_be = f"what `{axis.name}` can be, {low:g} to {high:g}"
                yield from _results(space.results, axis.name, axis.domain, can_be)


def _reading(check_: Check, reading: Reading) -> Iterator[Finding]:
    if reading.low > reading.high:
        yield RULE.finding(
            reading.at,
            f"the reading goes from {reading.low:f} down to {reading.high:f}",
            "no value can be read there",
            f"write `from: {reading.high:f}, to: {reading.low:f}`",
        )
        return
    to = "OL" if reading.to_over else f"{reading.high:f}"
    can_be = f"the reading, {reading.low:f} to {to} {reading.unit}"
    yield from _results(check_.results, reading.name, domain_of(reading), can_be)


def _results(results: Iterable[Result], name: str, domain: Range, can_be: str) -> Iterator[Finding]:
    for result in results:
        said = result.ranges.get(name, domain)
        if said.empty:
            turned = with_ends_in_order(said)
            hint = "delete it" if turned.empty else f"write `{range_as_text(turned)}`"
            message = f"the range `{result.said}` has its ends in the wrong order"
            yield RULE.finding(result.said.at, message, WHY, hint)
        elif said.meets(domain).empty:
            message = f"`{result.said}` lies outside {can_be}"
            hint = "put the result right, or let `from` and `to` of the reading reach it"
            yield RULE.finding(result.said.at, message, WHY, hint)
