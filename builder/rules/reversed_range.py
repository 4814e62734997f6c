"""A range with its ends in the wrong order, a reading that begins above its own end, or a result
outside of what the reading can be.

Why: No reading ever matches it, so its branch is never taken.

Wrong:

    running:
      check: Measure voltage across the battery posts
      when: [engine at 1500 rpm]
      reading: {unit: V, from: 0, to: 20, resolution: 0.01, origin: common practice}
      results:
        - {result: below 13, branch: repair}
        - {result: 14 to 13, branch: all-good}
        - {result: above 14, branch: repair}

Right:

    running:
      check: Measure voltage across the battery posts
      when: [engine at 1500 rpm]
      reading: {unit: V, from: 0, to: 20, resolution: 0.01, origin: common practice}
      results:
        - {result: below 13, branch: repair}
        - {result: 13 to 14, branch: all-good}
        - {result: above 14, branch: repair}

Fix: Write the lower end first. Keep results between the `from` and the `to` of the reading.
"""

from collections.abc import Iterable, Iterator
from datetime import date
from decimal import Decimal

from builder.graph.space import domain_of, range_as_text, with_ends_in_order
from builder.model.checks import Check, Reading, Result
from builder.model.finding import Finding, Severity, edit_of
from builder.model.library import Library
from builder.model.ranges import Range
from builder.model.text import Text
from builder.model.vehicle_data import Good
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="reversed-range",
    family=Family.READINGS,
    severity=Severity.ERROR,
    summary="A range that no reading can match.",
)
WHY = "no reading ever matches it, so its branch is never taken"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every range that is empty or outside its reading."""
    for step in facts.steps:
        if isinstance(step.body, Check):
            for reading in step.body.readings:
                yield from _reading(step.body, reading)
    for space in facts.spaces.values():
        for axis in space.axes:
            if axis.formula:
                low, high = (float(end.value) for end in axis.domain)
                limits = f"what `{axis.name}` can be, {low:g} to {high:g}"
                yield from _results(space.results, axis.name, axis.domain, limits)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every tool and spec whose span is the wrong way around."""
    for tool in library.tools.values():
        for span in tool.reads:
            yield from _turned(span.unit, f"`{tool.id}` reads", span.low, span.high)
    for spec in library.specs.values():
        yield from _turned(spec.unit, f"`{spec.id}` runs", spec.low, spec.high)
        yield from _good(spec.good)
    for vehicle in library.vehicles.values():
        for own in vehicle.specs.values():
            yield from _good(own.good)


def _good(good: Good) -> Iterator[Finding]:
    for one in (good, *good.by_load.values()):
        if one.range and one.range.empty:
            yield _ends_in_order(one.text, one.range)


def _ends_in_order(text: Text, span: Range, can_edit: bool = True) -> Finding:
    """Return the finding for an empty range, with the one that was meant."""
    turned = with_ends_in_order(span)
    right = "" if turned.empty else range_as_text(turned)
    hint = f"write `{right}`" if right else "delete it"
    message = f"the range `{text}` has its ends in the wrong order"
    edit = edit_of(text, right) if right and can_edit else None
    return RULE.finding(text.at, message, WHY, hint, edit=edit)


def _turned(unit: Text, what: str, low: Decimal, high: Decimal) -> Iterator[Finding]:
    if low > high:
        yield RULE.finding(unit.at, f"{what} from {low:f} down to {high:f} {unit}",
                           "no value is between these ends",
                           f"write `from: {high:f}, to: {low:f}`")  # fmt: skip


def _reading(check_: Check, reading: Reading) -> Iterator[Finding]:
    if reading.low > reading.high:
        yield RULE.finding(
            reading.at,
            f"the reading runs from {reading.low:f} down to {reading.high:f}",
            "no value is between these ends",
            f"write `from: {reading.high:f}, to: {reading.low:f}`",
        )
        return
    to = "OL" if reading.to_over else f"{reading.high:f}"
    limits = f"the reading, {reading.low:f} to {to} {reading.unit}"
    yield from _results(check_.results, reading.name, domain_of(reading), limits)


def _results(results: Iterable[Result], name: str, domain: Range, limits: str) -> Iterator[Finding]:
    for result in results:
        side = result.ranges.get(name, domain)
        if name in result.compares:  # the rule on results of a spec judges it
            continue
        if side.empty:
            yield _ends_in_order(result.text, side, can_edit=not name)
        elif side.intersection(domain).empty:
            message = f"`{result.text}` is outside {limits}"
            hint = "correct the result, or widen `from` and `to` of the reading"
            yield RULE.finding(result.text.at, message, WHY, hint)
