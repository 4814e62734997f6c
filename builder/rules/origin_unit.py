"""A limit in one unit whose origin gives the same figure in another unit; or two limits that a spec
of the shop has in another unit.

Why: A limit in mV that should be V is off by a thousand, and every good part fails.

Wrong:

    rotor:
      check: Measure the runout
      when: [key-off]
      reading: {unit: mm, from: 0, to: 1, resolution: 0.001, origin: "common practice, 0.004 in."}
      results: {above 0.004: repair, at most 0.004: all-good}

Right:

    rotor:
      check: Measure the runout
      when: [key-off]
      reading: {unit: in, from: 0, to: 1, resolution: 0.001, origin: "common practice, 0.004 in."}
      results: {above 0.004: repair, at most 0.004: all-good}

Fix: Write the unit of the origin, or the figure in the reading's unit.
"""

import re
from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction
from itertools import islice

from builder.model.checks import Check
from builder.model.finding import Finding, Related, Severity
from builder.model.vehicle_data import LimitShape
from builder.rules.shared.limits import Limit, limits_of, measuring_checks
from builder.rules.shared.rule import Facts, Family, Rule
from builder.trade.units import convert, find_unit, same_kind

RULE = Rule(
    name="origin-unit",
    family=Family.READINGS,
    severity=Severity.WARNING,
    summary="A limit whose origin gives the same figure in another unit.",
)
FIGURE = re.compile(r"(?<![\d.])(\d+(?:\.\d+)?) ?([^\W\d][\w°]*\.?)")
NEAR = Fraction(1, 10)  # a rounded figure is still the same


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for the first such limit of each check."""
    for _, body in measuring_checks(facts):
        found = (one for limit in limits_of(body) if (one := _finding(limit)))
        first = [*islice(found, 1)]
        yield from first or islice(_unlike_a_spec(facts, body), 1)


def _unlike_a_spec(facts: Facts, body: Check) -> Iterator[Finding]:
    """Yield a finding for a range whose two ends are those of a spec in another unit."""
    for reading in body.readings:
        ranges = [result.ranges.get(reading.name) for result in body.results]
        for spec in facts.library.specs.values() if not reading.spec else ():
            is_other = spec.unit != reading.unit and same_kind(spec.unit, reading.unit)
            is_band = spec.good.shape is LimitShape.BAND and spec.good.range
            if is_other and is_band and spec.good.range in ranges:
                yield RULE.finding(
                    reading.unit.at,
                    f"good is {spec.good.text} {reading.unit} here, and {spec.good.text} "
                    f"{spec.unit} for `{spec.id}`",
                    "with the wrong unit, good parts fail or bad ones pass",
                    f"write `unit: {spec.unit}`, if it's the same that is measured",
                    Related(spec.id.at, f"`{spec.id}`: {spec.text}"),
                )


def _finding(limit: Limit) -> Finding | None:
    reading = limit.reading
    for figure, symbol in FIGURE.findall(reading.origin or ""):
        unit = find_unit(symbol) or find_unit(symbol.rstrip("."))
        if unit is None or find_unit(reading.unit) in (None, unit):
            continue
        if not same_kind(unit.symbol, reading.unit):
            continue
        there = convert(Decimal(figure), unit.symbol, reading.unit)
        if _is_near(limit.value, Fraction(figure)) and not _is_near(limit.value, there):
            return RULE.finding(
                reading.unit.at,
                f"the limit is {limit.value:f} {reading.unit}, and its origin says "
                f"{figure} {symbol}",
                "with the wrong unit, good parts fail or bad ones pass",
                f"write `unit: {unit.symbol}`, or the limit in {reading.unit}",
            )
    return None


def _is_near(value: Decimal, figure: Fraction) -> bool:
    return abs(Fraction(value) - figure) <= NEAR * abs(figure)
