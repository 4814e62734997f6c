"""The unit that the numbers of a spec are in, by the tools that measure it.

In: a spec and the library; or a step, a reading by a spec, and the facts of the tree. Out: the
unit of its origin, or an `OtherUnit` where the tool can't show the numbers in the unit of the spec,
and can in another unit that it reads: then the unit was changed alone.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from builder.model.checks import Reading
from builder.model.knowledge import InstrumentRange
from builder.model.library import Library
from builder.model.ranges import BOTTOM, TOP, Range
from builder.model.tree import Step
from builder.model.vehicle_data import Good, Spec
from builder.rules.shared.limits import instrument_ranges
from builder.rules.shared.rule import Facts
from builder.trade.units import convert, same_kind

FIGURE = re.compile(r"(\d+(?:\.\d+)?) ?([A-Za-z°Ω%/]+)")
NEAR = 3  # figures that differ by no more say the same


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


def unit_of_origin(spec: Spec, library: Library) -> str:
    """Return the unit of the figures in a spec's origin, where the spec's own seems to be wrong.

    No figure is in the unit of the spec, and none says in another one what the limits say. Figures
    in a unit that the shop doesn't use come with a standard, and tell nothing.
    """
    figures = [
        (Decimal(number), unit)
        for number, unit in FIGURE.findall(spec.origin or "")
        if same_kind(unit, spec.unit)
    ]
    other = figures[0][1] if figures else ""
    if not other or any(unit == spec.unit for _, unit in figures):
        return ""
    if other not in library.shop.units.values() and not _is_prefix(other, spec.unit):
        return ""
    return "" if _is_prefix(other, spec.unit) and _say_the_same(figures, spec) else other


def _say_the_same(figures: list[tuple[Decimal, str]], spec: Spec) -> bool:
    """Whether a figure, converted, is about as large as one of the limits."""
    said = [convert(number, unit, spec.unit) for number, unit in figures]
    limits = [Fraction(end) for end in _ends(spec.good)]
    return any(one <= NEAR * end and end <= NEAR * one for one in said for end in limits)


def _is_prefix(one: str, other: str) -> bool:
    """Whether two units differ by a prefix, as V and mV."""
    return one != other and (one.endswith(other) or other.endswith(one))
