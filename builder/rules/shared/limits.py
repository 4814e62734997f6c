"""What the limits of a check depend on: its readings, its conditions, its instruments.

In: a `Step` with a check and the `Facts` of its tree. Out: its limits one by one, the conditions
under which they apply, and the instruments that could show them.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from builder.model.checks import Check, Reading, Result
from builder.model.conditions import CountsAs
from builder.model.knowledge import InstrumentRange
from builder.model.ranges import EVERYTHING, OVER
from builder.model.tree import Step
from builder.rules.shared.rule import Facts
from builder.trade.units import convert, same_kind


@dataclass(frozen=True, slots=True)
class Limit:
    """One end of a range of a reading."""

    value: Decimal
    reading: Reading
    result: Result


def measuring_checks(facts: Facts) -> Iterator[tuple[Step, Check]]:
    """Yield the checks that measure something in a unit."""
    for step in facts.steps:
        body = step.body
        if isinstance(body, Check) and any(not reading.one_of for reading in body.readings):
            yield step, body


def limits_of(check: Check) -> Iterator[Limit]:
    """Yield every end of a range once, without the ends of the readings themselves."""
    for reading in check.readings:
        if reading.one_of:
            continue
        seen = {reading.low, reading.high}
        for result in check.results:
            side = result.ranges.get(reading.name, EVERYTHING)
            if side == OVER:
                continue
            for value in (side.low.value, side.high.value):
                if value.is_finite() and value not in seen:
                    seen.add(value)
                    yield Limit(value, reading, result)


def has_conditions(facts: Facts, step: Step) -> bool:
    """Whether a step or the step whose method it uses names a state, or a condition in words."""
    return any(one.needs or one.when for one in _with_method(facts, step))


def is_met_by_state(facts: Facts, step: Step, meaning: CountsAs) -> bool:
    """Whether a state that a step needs counts as a load, or as power off."""
    needs = (need for one in _with_method(facts, step) for need in one.needs)
    known = (facts.library.conditions.get(need.condition) for need in needs)
    return any(one is not None and one.counts_as is meaning for one in known)


def _with_method(facts: Facts, step: Step) -> Iterator[Step]:
    """Yield a step, and the step whose method it uses."""
    yield step
    if step.same_as and step.same_as in facts.tree.steps:
        yield facts.tree.steps[step.same_as]


def instrument_ranges(facts: Facts, step: Step, unit: str) -> list[InstrumentRange] | None:
    """Return what the step's tools can read of that kind; None where that is unknown.

    It is unknown where the step names no tool, or a tool that doesn't list what it reads.
    """
    tools = [facts.library.tools.get(name) for name in step.tools]
    if not tools or any(tool is None or not tool.reads for tool in tools):
        return None
    ranges = (range_ for tool in tools if tool for range_ in tool.reads)
    return [range_ for range_ in ranges if same_kind(range_.unit, unit)]


def in_unit(value: Decimal, reading: Reading, instrument: InstrumentRange) -> Fraction:
    """Return a value of a reading in the instrument's unit."""
    return convert(value, reading.unit, instrument.unit)
