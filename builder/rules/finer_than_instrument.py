"""A limit that the step's tools can't show: finer than their resolution or the reading's, smaller
than their error, or beyond their range; or a reading with a finer resolution than any of the tools
has.

Why: The reading jumps across the limit by itself, and a good wire gets replaced.

Wrong:

    joint:
      check: Measure resistance of the connection
      when: [battery-disconnected]
      tools: [multimeter]
      reading: {unit: ohm, from: 0, to: 100, resolution: 0.1, origin: common practice}
      results:
        - {result: at most 0.2, branch: all-good}
        - {result: above 0.2, branch: repair}

Right:

    joint:
      check: Measure voltage drop at the connection
      when: [loads-on]
      tools: [multimeter]
      reading: {unit: V, from: 0, to: 16, resolution: 0.01, origin: common practice}
      results:
        - {result: at most 0.1, branch: all-good}
        - {result: above 0.1, branch: repair}

Fix: Where the tool is too small, name one that reads that far. Else write a limit that the tool can
show, name a finer tool, or measure another way: a small resistance as a voltage drop with a known
current flowing.
"""

import re
from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction

from builder.model.checks import Check, Reading
from builder.model.finding import Finding, Related, Severity
from builder.model.knowledge import InstrumentRange
from builder.model.tree import Step
from builder.rules.shared.limits import (
    Limit,
    in_unit,
    instrument_ranges,
    limits_of,
    measuring_checks,
)
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.spec_units import other_unit
from builder.trade.units import convert, find_unit, same_kind

RULE = Rule(
    name="finer-than-instrument",
    family=Family.READINGS,
    severity=Severity.WARNING,
    summary="A limit that the tool can't show.",
)
NUMBER = r"\d+(?:\.\d+)?"
ERROR = re.compile(rf"(?:({NUMBER}) *%)?[ +]*({NUMBER})?")


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every limit that the reading or every tool can't show."""
    for step, body in measuring_checks(facts):
        if any(other_unit(facts, step, reading) for reading in body.readings):
            continue  # `spec-unit` speaks first
        limits = list(limits_of(body))
        too_small = list(_too_small(facts, step, body, limits))
        yield from (finding for _, finding in too_small)
        beyond = [reading for reading, _ in too_small]
        coarse: list[Reading] = []
        for limit in limits:
            if limit.reading in beyond:
                continue
            resolution = limit.reading.resolution
            if resolution is not None and limit.value % resolution != 0:
                yield _finding(limit, f"the reading's resolution is {resolution:f}")
            elif find_unit(limit.reading.unit):
                ranges = instrument_ranges(facts, step, limit.reading.unit)
                reasons = [_why_not(range_, limit) for range_ in ranges or ()]
                if reasons and all(reasons):
                    coarse.append(limit.reading)
                    yield _too_coarse(facts, step, limit, min(reasons, key=len))
        for reading in body.readings:
            if not reading.one_of and reading not in coarse and find_unit(reading.unit):
                ranges = instrument_ranges(facts, step, reading.unit) or []
                values = [limit.value for limit in limits if limit.reading is reading]
                yield from _resolution_too_fine(reading, values, ranges)


def _too_small(
    facts: Facts, step: Step, body: Check, limits: list[Limit]
) -> Iterator[tuple[Reading, Finding]]:
    """Yield the readings with a limit that none of the step's tools reaches."""
    for reading in body.readings:
        values = [limit.value for limit in limits if limit.reading is reading]
        if reading.one_of or not find_unit(reading.unit):
            continue
        ranges = instrument_ranges(facts, step, reading.unit)
        if ranges and any(not any(_reaches(one, value, reading) for one in ranges)
                          for value in values):  # fmt: skip
            yield reading, _tool_too_small(facts, step, reading, values)


def _tool_too_small(facts: Facts, step: Step, reading: Reading, values: list[Decimal]) -> Finding:
    pairs = [(name, one) for name in step.tools for one in facts.library.tools[name].reads
             if same_kind(one.unit, reading.unit)]  # fmt: skip
    name, widest = max(pairs, key=lambda pair: (pair[1].unit == reading.unit, pair[1].high))
    larger = [f"`{id_}`" for id_, tool in facts.library.tools.items()
              if any(same_kind(one.unit, reading.unit)
                     and all(_reaches(one, value, reading) for value in values)
                     for one in tool.reads)]  # fmt: skip
    high = "OL" if reading.high.is_infinite() else f"{reading.high:f}"
    return RULE.finding(
        name.at,
        f"`{name}` reads {widest.low:f} to {widest.high:f} {widest.unit}, "
        f"this step reads {reading.low:f} to {high} {reading.unit}",
        "past its end the tool shows no number, and the tech has to guess the result",
        f"use {' or '.join(larger)}"
        if larger
        else "name a tool that reads that far, or add one to kb/tools.yml",
    )


def _resolution_too_fine(
    reading: Reading, limits: list[Decimal], ranges: list[InstrumentRange]
) -> Iterator[Finding]:
    """Yield a finding where every tool that reaches the limits is coarser than the reading."""
    resolution = reading.resolution
    values = limits or [end for end in (reading.low, reading.high) if end.is_finite()]
    reaching = [tool for tool in ranges if all(_reaches(tool, value, reading) for value in values)]
    if resolution is None or not reaching:
        return
    widths = ((_resolution_in_unit(tool, reading), tool) for tool in reaching)
    width, finest = min(widths, key=lambda pair: pair[0])
    if resolution < width:
        yield RULE.finding(
            resolution.at,
            f"the resolution {resolution:f} {reading.unit} is finer than the tool's "
            f"{finest.resolution:f} {finest.unit}",
            "the last digit of the reading would be a guess",
            "write the tool's resolution, or name a finer tool",
        )


def _reaches(tool: InstrumentRange, value: Decimal, reading: Reading) -> bool:
    return tool.low <= in_unit(value, reading, tool) <= tool.high


def _resolution_in_unit(tool: InstrumentRange, reading: Reading) -> Fraction:
    """Return the resolution of a tool in the unit of a reading; 0 where it is unknown."""
    zero, one = (
        convert(value, tool.unit, reading.unit) for value in (0, tool.resolution or Decimal(0))
    )
    return one - zero


def _why_not(tool: InstrumentRange, limit: Limit) -> str:
    """Return why a tool can't tell the two sides of a limit apart, or nothing."""
    value = in_unit(limit.value, limit.reading, tool)
    if not tool.low <= value <= tool.high:
        return f"the tool reads {tool.low:f} to {tool.high:f} {tool.unit}"
    if tool.resolution and value % Fraction(tool.resolution) != 0:
        return f"the tool's resolution is {tool.resolution:f} {tool.unit}"
    error = _error(tool, value)
    if value != 0 and abs(value) < error:
        return f"the tool's error there is {float(error):.3g} {tool.unit}"
    return ""


def _error(tool: InstrumentRange, value: Fraction) -> Fraction:
    """Compute `0.5 % + 0.02`: a share of the reading, plus a fixed part."""
    match = ERROR.fullmatch(tool.error.strip()) if tool.error else None
    if match is None:
        return Fraction(0)
    share, fixed = (Fraction(part or 0) for part in match.groups())
    return abs(value) * share / 100 + fixed


def _too_coarse(facts: Facts, step: Step, limit: Limit, reason: str) -> Finding:
    """Return the finding for a limit; at the tool, where the shop has one that can show it."""
    resolution = limit.reading.resolution or Decimal(0)
    fine = [
        f"`{id_}`"
        for id_, tool in facts.library.tools.items()
        if any(same_kind(one.unit, limit.reading.unit) and not _why_not(one, limit)
               and _resolution_in_unit(one, limit.reading) <= resolution
               for one in tool.reads)
    ]  # fmt: skip
    own = [
        name
        for name in step.tools
        for one in (facts.library.tools[name].reads if name in facts.library.tools else ())
        if same_kind(one.unit, limit.reading.unit)
    ]
    if not fine or not own:
        return _finding(limit, reason)
    return RULE.finding(
        own[0].at,
        f"`{own[0]}` can't show the limit {limit.value:f} {limit.reading.unit}: {reason}",
        "which side of the limit a reading is on becomes luck",
        f"use {' or '.join(fine)}, which can; or write a limit that this tool can show",
        Related(limit.result.text.at, "the limit"),
        *_of_spec(facts, limit),
    )


def _of_spec(facts: Facts, limit: Limit) -> Iterator[Related]:
    """Yield the place where a limit and its unit come from, if it's a spec."""
    spec = facts.library.specs.get(str(limit.reading.spec))
    if spec:
        yield Related(spec.unit.at, f"`{spec.id}` is in {spec.unit} here")


def _finding(limit: Limit, reason: str) -> Finding:
    return RULE.finding(
        limit.result.text.at,
        f"no tool of this step can show the limit {limit.value:f} {limit.reading.unit}: {reason}",
        "which side of the limit a reading is on becomes luck",
        "write a limit that the tool can show, or name a finer tool",
    )
