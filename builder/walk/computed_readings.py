"""The readings of a check that are calculated from others: their formula, unit and range.

In: a `Check` and the domains of its readings. Out: rows of the walk table.
"""

from collections.abc import Iterator, Mapping

from builder.model.checks import Check, Computed
from builder.model.ranges import EVERYTHING, Range, between
from builder.trade.expressions import (
    bounds_of_expression,
    compile_expression,
    parse_expression,
    unit_of_expression,
)
from builder.trade.mistake import Mistake
from builder.trade.units import find_unit
from builder.walk.rows import ComputedRow


def unit_symbol(text: str) -> str:
    """Return the symbol of a unit in our list, whatever its spelling."""
    known = find_unit(text)
    return known.symbol if known else text


def computed_rows(check: Check, domains: dict[str, Range]) -> Iterator[ComputedRow]:
    """Yield the computed readings; the domain of each is added to `domains`."""
    units = computed_units(check)
    for computed in check.computed:
        formula = parse_expression(computed.expression)
        if isinstance(formula, Mistake) or not set(formula.names) <= domains.keys():
            return
        domains[str(computed.name)] = _domain_of(computed, domains)
        yield {
            "name": str(computed.name),
            "unit": units[str(computed.name)],
            "form": compile_expression(formula),
        }


def computed_units(check: Check) -> Mapping[str, str]:
    """Return the unit of each computed reading; "" for a plain number, or if the units clash."""
    units = {reading.name: unit_symbol(reading.unit) for reading in check.readings}
    for computed in check.computed:
        formula = parse_expression(computed.expression)
        unit = formula if isinstance(formula, Mistake) else unit_of_expression(formula, units)
        units[str(computed.name)] = "" if isinstance(unit, Mistake) else unit
    return {str(computed.name): units[str(computed.name)] for computed in check.computed}


def _domain_of(computed: Computed, domains: Mapping[str, Range]) -> Range:
    formula = parse_expression(computed.expression)
    ends = {name: (domain.low.value, domain.high.value) for name, domain in domains.items()}
    bounds = formula if isinstance(formula, Mistake) else bounds_of_expression(formula, ends)
    return EVERYTHING if isinstance(bounds, Mistake) else between(*bounds)
