"""The unit that the numbers of a spec are in, by the tools that measure it.

In: a step, a reading by a spec, and the facts of the tree. Out: `OtherUnit` where the tool can't
show the numbers in the unit of the spec, and can in another unit that it reads: then the unit was
changed alone.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from builder.model.checks import Reading
from builder.model.knowledge import InstrumentRange
from builder.model.library import Library
from builder.model.ranges import BOTTOM, TOP, Range
from builder.model.tree import Step
from builder.model.vehicle_data import Good, Spec
from builder.rules.shared.limits import instrument_ranges
from builder.rules.shared.rule import Facts


@dataclass(frozen=True, slots=True)
class OtherUnit:
    """A unit in which the tool can show the numbers of a spec."""

    unit: str
    why: str  # what the tool shows in the unit of the spec


def is_out_of_reach(spec: Spec, good: Range) -> bool:
    """Whether an end of a good range lies outside what can be read, or its ends are swapped."""
    if spec.low > spec.high:
        return False  # `reversed-range` names it
    ends = [cut.value for cut in good if cut not in (BOTTOM, TOP)]
    return good.empty or any(not spec.low <= end <= spec.high for end in ends)


def other_unit(facts: Facts, step: Step, reading: Reading) -> OtherUnit | None:
    """Return the unit that the numbers of a spec seem to be in, if it isn't the spec's own."""
    spec = facts.library.specs.get(str(reading.spec)) if reading.spec else None
    if spec is None or spec.high.is_infinite():
        return None
    every = instrument_ranges(facts, step, spec.unit) or []
    own = [tool for tool in every if tool.unit == spec.unit]
    values = [*_values(spec, facts.library)]
    too_far, too_fine = _too_far(own, values), _too_fine(own, spec)
    why = too_far or too_fine
    fitting = [
        tool for tool in every
        if why and tool.unit != spec.unit and tool.high >= spec.high
        and not _too_far([tool], values) and not (too_fine and _too_fine([tool], spec))
    ]  # fmt: skip
    nearest = min(fitting, key=lambda tool: tool.high, default=None)
    return OtherUnit(str(nearest.unit), why) if nearest else None


def _too_far(tools: list[InstrumentRange], values: list[Decimal]) -> str:
    """Return what the tools show, where all values are beyond it."""
    if not tools or not values:
        return ""
    widest = max(tools, key=lambda tool: tool.high)
    return f"reads only up to {widest.high:f} {widest.unit}" if min(values) > widest.high else ""


def _too_fine(tools: list[InstrumentRange], spec: Spec) -> str:
    """Return what the tools show, where the steps of all are coarser than the spec's."""
    steps = [tool.resolution for tool in tools if tool.resolution]
    if not spec.resolution or not steps or len(steps) < len(tools):
        return ""
    finest = min(steps)
    return f"shows steps of {finest:f} {spec.unit} only" if finest > spec.resolution else ""


def _values(spec: Spec, library: Library) -> Iterator[Decimal]:
    """Yield the limits of a spec, and those that vehicles have for it."""
    yield from _ends(spec.good)
    for vehicle in library.vehicles.values():
        if spec.id in vehicle.specs:
            yield from _ends(vehicle.specs[spec.id].good)


def _ends(good: Good) -> Iterator[Decimal]:
    span: Range | None = good.range
    yield from (cut.value for cut in span or () if cut.value.is_finite() and cut.value)
    for row in good.by_load.values():
        yield from _ends(row)
