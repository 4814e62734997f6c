"""The readings of a check that are worked out from others: their formula, unit and extremes.

In: a `Check` and all that its readings can be. Out: rows of the walk table.
"""

from collections.abc import Iterator, Mapping

from builder.model.ranges import EVERYTHING, Range, between
from builder.model.tree import Check, Computed
from builder.trade.expressions import bounds, compiled, parse, unit_of
from builder.trade.mistake import Mistake
from builder.trade.units import unit
from builder.walk.rows import ComputedRow


def symbol(text: str) -> str:
    """Write a unit as our list does, whatever its spelling."""
    known = unit(text)
    return known.symbol if known else text


def computed_rows(check: Check, axes: dict[str, Range]) -> Iterator[ComputedRow]:
    """Yield the computed readings; what each can be is added to the axes."""
    units = computed_units(check)
    for one in check.computed:
        formula = parse(one.expression)
        if isinstance(formula, Mistake) or not set(formula.names) <= axes.keys():
            return
        axes[str(one.name)] = _all_of_computed(one, axes)
        yield {"name": str(one.name), "unit": units[str(one.name)], "form": compiled(formula)}


def computed_units(check: Check) -> Mapping[str, str]:
    """Return the unit of each computed reading; "" for a plain number, or where units clash."""
    units = {one.name: symbol(one.unit) for one in check.readings}
    for one in check.computed:
        formula = parse(one.expression)
        found = formula if isinstance(formula, Mistake) else unit_of(formula, units)
        units[str(one.name)] = "" if isinstance(found, Mistake) else found
    return {str(one.name): units[str(one.name)] for one in check.computed}


def _all_of_computed(computed: Computed, axes: Mapping[str, Range]) -> Range:
    formula = parse(computed.expression)
    ends = {name: (side.low.value, side.high.value) for name, side in axes.items()}
    found = formula if isinstance(formula, Mistake) else bounds(formula, ends)
    return EVERYTHING if isinstance(found, Mistake) else between(*found)
