"""The readings of a check that are worked out from others: their formula, unit and extremes.

In: a `Check` and all that its readings can be. Out: rows of the walk table.
"""

from collections.abc import Iterator, Mapping

from builder.model.ranges import EVERYTHING, Range, between
from builder.model.tree import Check, Computed
from builder.trade.expressions import (
    bounds_of_expression,
    compile_expression,
    parse_expression,
    unit_of_expression,
)
from builder.trade.mistake import Mistake
from builder.trade.units import find_unit
from builder.walk.rows import ComputedRow


def symbol(text: str) -> str:
    """Write a unit as our list does, whatever its spelling."""
    known = find_unit(text)
    return known.symbol if known else text


def computed_rows(check: Check, axes: dict[str, Range]) -> Iterator[ComputedRow]:
    """Yield the computed readings; what each can be is added to the axes."""
    units = computed_units(check)
    for one in check.computed:
        formula = parse_expression(one.expression)
        if isinstance(formula, Mistake) or not set(formula.names) <= axes.keys():
            return
        axes[str(one.name)] = _all_of_computed(one, axes)
        yield {
            "name": str(one.name),
            "unit": units[str(one.name)],
            "form": compile_expression(formula),
        }


def computed_units(check: Check) -> Mapping[str, str]:
    """Return the unit of each computed reading; "" for a plain number, or where units clash."""
    units = {one.name: symbol(one.unit) for one in check.readings}
    for one in check.computed:
        formula = parse_expression(one.expression)
        found = formula if isinstance(formula, Mistake) else unit_of_expression(formula, units)
        units[str(one.name)] = "" if isinstance(found, Mistake) else found
    return {str(one.name): units[str(one.name)] for one in check.computed}


def _all_of_computed(computed: Computed, axes: Mapping[str, Range]) -> Range:
    formula = parse_expression(computed.expression)
    ends = {name: (side.low.value, side.high.value) for name, side in axes.items()}
    found = formula if isinstance(formula, Mistake) else bounds_of_expression(formula, ends)
    return EVERYTHING if isinstance(found, Mistake) else between(*found)
