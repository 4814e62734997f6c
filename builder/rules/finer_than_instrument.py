"""A limit that the tools of the step cannot show: finer than their resolution or the reading's,
smaller than their error, or beyond their range; or a reading in finer steps than any of them shows.

Why: The reading jumps from one side of the limit to the other by itself, and a good wire is
replaced.

Wrong:

    joint:
      check: Resistance of the joint
      when: [power off]
      tools: [multimeter]
      reading: {unit: ohm, from: 0, to: 100, resolution: 0.1, origin: common practice}
      results:
        - {result: at most 0.2, branch: all-good}
        - {result: above 0.2, branch: repair}

Right:

    joint:
      check: Voltage drop of the joint
      when: [load of 5 A]
      tools: [multimeter]
      reading: {unit: V, from: 0, to: 16, resolution: 0.01, origin: common practice}
      results:
        - {result: at most 0.1, branch: all-good}
        - {result: above 0.1, branch: repair}

Fix: Write a limit that the instrument can tell apart, name a finer tool, or measure another way:
a small resistance as a voltage drop under a known current.
"""

import re
from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction

from builder.model.finding import Finding, Severity
from builder.model.knowledge import InstrumentRange
from builder.model.tree import Reading
from builder.rules.shared.limits import (
    Limit,
    in_unit,
    instrument_ranges,
    limits_of,
    measuring_checks,
)
from builder.rules.shared.rule import Facts, Family, Rule
from builder.trade.units import convert, find_unit

RULE = Rule(
    name="finer-than-instrument",
    family=Family.READINGS,
    severity=Severity.WARNING,
    summary="A limit that the instrument cannot show.",
)
NUMBER = r"\d+(?:\.\d+)?"
ERROR = re.compile(rf"(?:({NUMBER}) *%)?[ +]*({NUMBER})?")


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every limit beyond what the reading or every tool can tell."""
    for step, body in measuring_checks(facts):
        limits = list(limits_of(body))
        for limit in limits:
            fine = limit.reading.resolution
            if fine is not None and limit.value % fine != 0:
                yield _finding(limit, f"the reading goes in steps of {fine:f}")
            elif find_unit(limit.reading.unit):
                tools = instrument_ranges(facts, step, limit.reading.unit)
                reasons = [_cannot(one, limit) for one in tools or ()]
                if reasons and all(reasons):
                    yield _finding(limit, min(reasons, key=len))
        for reading in body.readings:
            if not reading.one_of and find_unit(reading.unit):
                tools = instrument_ranges(facts, step, reading.unit) or []
                told = [limit.value for limit in limits if limit.reading is reading]
                yield from _steps_too_fine(reading, told, tools)


def _steps_too_fine(
    reading: Reading, told: list[Decimal], tools: list[InstrumentRange]
) -> Iterator[Finding]:
    """Yield a finding where all tools that reach the limits show coarser steps than the reading."""
    fine = reading.resolution
    values = told or [end for end in (reading.low, reading.high) if end.is_finite()]
    reaching = [one for one in tools if all(_reaches(one, value, reading) for value in values)]
    if fine is None or not reaching:
        return
    width, finest = min(((_width(one, reading), one) for one in reaching), key=lambda two: two[0])
    if fine < width:
        yield RULE.finding(
            fine.at,
            f"steps of {fine:f} {reading.unit} cannot be read: "
            f"the tool shows steps of {finest.resolution:f} {finest.unit}",
            "the last figure of the reading would be made up",
            "write the steps of the tool, or name a finer one",
        )


def _reaches(tool: InstrumentRange, value: Decimal, reading: Reading) -> bool:
    return tool.low <= in_unit(value, reading, tool) <= tool.high


def _width(tool: InstrumentRange, reading: Reading) -> Fraction:
    """Return how wide a step of a tool is in the unit of a reading; 0 where it is not said."""
    zero, one = (
        convert(value, tool.unit, reading.unit) for value in (0, tool.resolution or Decimal(0))
    )
    return one - zero


def _cannot(tool: InstrumentRange, limit: Limit) -> str:
    """Return why an instrument cannot tell the two sides of a limit apart, or nothing."""
    value = in_unit(limit.value, limit.reading, tool)
    if not tool.low <= value <= tool.high:
        return f"the tool reads {tool.low:f} to {tool.high:f} {tool.unit}"
    if tool.resolution and value % Fraction(tool.resolution) != 0:
        return f"the tool shows steps of {tool.resolution:f} {tool.unit}"
    error = _error(tool, value)
    if value != 0 and abs(value) < error:
        return f"the tool may be wrong by {float(error):.3g} {tool.unit} there"
    return ""


def _error(tool: InstrumentRange, value: Fraction) -> Fraction:
    """Work out `0.5 % + 0.02`: a share of the reading, plus a fixed part."""
    match = ERROR.fullmatch(tool.error.strip()) if tool.error else None
    if match is None:
        return Fraction(0)
    share, fixed = (Fraction(part or 0) for part in match.groups())
    return abs(value) * share / 100 + fixed


def _finding(limit: Limit, reason: str) -> Finding:
    return RULE.finding(
        limit.result.said.at,
        f"the limit {limit.value:f} {limit.reading.unit} cannot be told: {reason}",
        "the reading falls on one side or the other by chance",
        "write a limit that the tool can show, or name a finer tool",
    )
