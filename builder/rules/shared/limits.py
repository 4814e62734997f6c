"""What the limits of a check stand on: its readings, its conditions, its instruments.

In: a `Step` with a check and the `Facts` of its tree. Out: its limits one by one, the conditions
under which they count, and the instruments that could show them.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from builder.model.knowledge import InstrumentRange
from builder.model.ranges import EVERYTHING, OVER
from builder.model.tree import Check, Reading, Result, Step
from builder.rules.shared.rule import Facts
from builder.trade.units import convert, same_kind


@dataclass(frozen=True, slots=True)
class Limit:
    """One end of a range of a reading."""

    value: Decimal
    reading: Reading
    result: Result


def measuring(facts: Facts) -> Iterator[tuple[Step, Check]]:
    """Yield the checks that measure something in a unit."""
    for step in facts.steps:
        body = step.body
        if isinstance(body, Check) and any(not one.one_of for one in body.readings):
            yield step, body


def limits_of(check: Check) -> Iterator[Limit]:
    """Yield every end of a range once, but for the ends of the readings themselves."""
    for reading in check.readings:
        if reading.one_of:
            continue
        told = {reading.low, reading.high}
        for result in check.results:
            said = result.ranges.get(reading.name, EVERYTHING)
            if said == OVER:
                continue
            for value in (said.low.value, said.high.value):
                if value.is_finite() and value not in told:
                    told.add(value)
                    yield Limit(value, reading, result)


def conditions(facts: Facts, step: Step) -> str:
    """Return all that is said about when the step counts, its own and its method's."""
    method = facts.tree.steps.get(step.same_as) if step.same_as else None
    return "; ".join([*step.when, *(method.when if method else ())])


def instruments(facts: Facts, step: Step, unit: str) -> list[InstrumentRange] | None:
    """Return what the step's tools can read of that kind; None where nobody can tell.

    That is where the step names no tool, or one that is not said to read anything in particular.
    """
    tools = [facts.library.tools.get(name) for name in step.tools]
    if not tools or any(tool is None or not tool.reads for tool in tools):
        return None
    reads = (one for tool in tools if tool for one in tool.reads)
    return [one for one in reads if same_kind(one.unit, unit)]


def in_unit(value: Decimal, reading: Reading, instrument: InstrumentRange) -> Fraction:
    """Return a value of a reading in the instrument's unit."""
    return convert(value, reading.unit, instrument.unit)
