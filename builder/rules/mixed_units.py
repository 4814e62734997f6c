"""Units that do not go together: in a computed reading volts and millivolts, or volts and ohms; or
a reading in a unit that none of the step's tools can read.

Why: 12 V less 350 mV is not -338; and nobody reads kPa on a multimeter.

Wrong:

    drop:
      check: Battery and lamp beside each other
      when: [lamp on]
      readings:
        battery: {unit: V, from: 9, to: 16, resolution: 0.01, origin: common practice}
        lamp: {unit: mV, from: 0, to: 9000, resolution: 1, origin: common practice}
      computed:
        drop: battery - lamp
      results:
        - result: {drop: -8991 to 0.5}
          branch: all-good
        - result: {drop: above 0.5}
          branch: repair

Right:

    drop:
      check: Battery and lamp beside each other
      when: [lamp on]
      readings:
        battery: {unit: V, from: 9, to: 16, resolution: 0.01, origin: common practice}
        lamp: {unit: V, from: 0, to: 9, resolution: 0.01, origin: common practice}
      computed:
        drop: battery - lamp
      results:
        - result: {drop: 0 to 0.5}
          branch: all-good
        - result: {drop: above 0.5}
          branch: repair

Fix: Give the readings of a sum one unit; name the tool that reads the unit of the step.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.model.tree import Check, Step
from builder.rules.shared.limits import instrument_ranges, measuring_checks
from builder.rules.shared.rule import Facts, Family, Rule
from builder.trade.expressions import parse_expression, unit_of_expression
from builder.trade.mistake import Mistake
from builder.trade.units import find_unit

RULE = Rule(
    name="mixed-units",
    family=Family.READINGS,
    severity=Severity.ERROR,
    summary="Units that do not go together.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every sum of unlike units, and every reading its tools cannot take."""
    for step, body in measuring_checks(facts):
        yield from _sums(body)
        yield from _tools(facts, step, body)


def _sums(body: Check) -> Iterator[Finding]:
    units = {one.name: str(one.unit) for one in body.readings}
    if any(find_unit(one.unit) is None for one in body.readings if not one.one_of):
        return  # told as an unknown unit
    for sum_ in body.computed:
        formula = parse_expression(sum_.expression)
        if isinstance(formula, Mistake) or any(name not in units for name in formula.names):
            continue  # told by the rule `computed`
        found = unit_of_expression(formula, units)
        if isinstance(found, Mistake):
            yield RULE.finding(
                sum_.expression.at,
                f"the units of `{sum_.expression}` do not go together: {found.message}",
                "the sum would be wrong, and nobody would see it",
                "give the readings one unit, or bring them to one with a factor",
            )
            return
        units[str(sum_.name)] = found


def _tools(facts: Facts, step: Step, body: Check) -> Iterator[Finding]:
    for reading in body.readings:
        if reading.one_of or find_unit(reading.unit) is None:
            continue
        if instrument_ranges(facts, step, reading.unit) == []:
            tools = ", ".join(f"`{tool}`" for tool in step.tools)
            yield RULE.finding(
                reading.unit.at,
                f"none of {tools} reads `{reading.unit}`",
                "whoever stands there with that tool cannot take this reading",
                "write the unit that the tool reads, or name the tool that reads this one",
            )
