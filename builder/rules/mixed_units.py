"""Units that don't go together: volts and millivolts, or volts and ohms, in one computed reading;
or a reading in a unit that none of the step's tools can read.

Why: 12 V minus 350 mV is not -338, and no multimeter reads kPa.

Wrong:

    drop:
      check: Measure voltage at the battery and at the lamp
      when: [loads-on]
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
      check: Measure voltage at the battery and at the lamp
      when: [loads-on]
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

Fix: Give the readings of a calculation one unit; name the tool that reads the step's unit.
"""

from collections.abc import Iterator

from builder.model.checks import Check
from builder.model.finding import Finding, Severity
from builder.model.tree import Step
from builder.rules.shared.limits import instrument_ranges, measuring_checks
from builder.rules.shared.rule import Facts, Family, Rule
from builder.trade.expressions import parse_expression, unit_of_expression
from builder.trade.mistake import Mistake
from builder.trade.units import find_unit

RULE = Rule(
    name="mixed-units",
    family=Family.READINGS,
    severity=Severity.ERROR,
    summary="Units that don't go together.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every computed reading of mixed units, and every unit no tool reads."""
    for step, body in measuring_checks(facts):
        yield from _computed_readings(body)
        yield from _tools(facts, step, body)


def _computed_readings(body: Check) -> Iterator[Finding]:
    units = {reading.name: str(reading.unit) for reading in body.readings}
    if any(find_unit(reading.unit) is None for reading in body.readings if not reading.one_of):
        return  # the rule `unknown-unit` reports it
    for computed in body.computed:
        formula = parse_expression(computed.expression)
        if isinstance(formula, Mistake) or any(name not in units for name in formula.names):
            continue  # the rule `computed` reports it
        unit = unit_of_expression(formula, units)
        if isinstance(unit, Mistake):
            yield RULE.finding(
                computed.expression.at,
                f"the units of `{computed.expression}` don't go together: {unit.message}",
                "the calculation would be wrong, and nobody would see it",
                "give the readings one unit, or convert them with a factor",
            )
            return
        units[str(computed.name)] = unit


def _tools(facts: Facts, step: Step, body: Check) -> Iterator[Finding]:
    for reading in body.readings:
        if reading.one_of or find_unit(reading.unit) is None:
            continue
        if instrument_ranges(facts, step, reading.unit) == []:
            tools = ", ".join(f"`{tool}`" for tool in step.tools)
            yield RULE.finding(
                reading.unit.at,
                f"none of {tools} reads `{reading.unit}`",
                "the tech can't take this reading with that tool",
                "write a unit that the tool reads, or name a tool that reads this one",
            )
