"""A unit that isn't in the list of units.

Why: A reading in an unknown unit can't be compared or converted, and one wrong letter turns milli
into mega.

Wrong:

    drain:
      check: Measure parasitic draw
      when: [key out for 40 min]
      reading: {unit: mAmps, from: 0, to: 400, resolution: 0.1, origin: common practice}
      results:
        - {result: at most 50, branch: all-good}
        - {result: above 50, branch: repair}

Right:

    drain:
      check: Measure parasitic draw
      when: [key out for 40 min]
      reading: {unit: mA, from: 0, to: 400, resolution: 0.1, origin: common practice}
      results:
        - {result: at most 50, branch: all-good}
        - {result: above 50, branch: repair}

Fix: Write the unit as the list of units has it: V, mA, ohm, kPa, °C and so on.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.checks import Check
from builder.model.finding import Edit, Finding, Severity, edit_of
from builder.model.library import Library
from builder.model.text import Text
from builder.model.typing_slip import is_typing_slip
from builder.rules.shared.rule import Facts, Family, Rule
from builder.trade.units import ALIASES, UNITS, find_unit, nearest_units

RULE = Rule(
    name="unknown-unit",
    family=Family.READINGS,
    severity=Severity.ERROR,
    summary="A unit that isn't in the list of units.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every unit of a reading or a spec that is unknown."""
    for step in facts.steps:
        if isinstance(step.body, Check):
            for reading in step.body.readings:
                if not reading.one_of:
                    yield from _unit(reading.unit)
            if step.body.figure:
                yield from _unit(step.body.figure.unit)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every unit of a tool, a spec or the shop that is unknown."""
    for spec in library.specs.values():
        yield from _unit(spec.unit)
    for quantity, unit in library.shop.units.items():
        yield from _of_shop(quantity, unit)
    for tool in library.tools.values():
        for instrument_range in tool.reads:
            yield from _unit(instrument_range.unit)


def _of_shop(quantity: str, unit: str) -> Iterator[Finding]:
    """Yield a finding for a unit of the shop's settings that its quantity doesn't have."""
    found = find_unit(unit)
    if isinstance(unit, Text) and (found is None or found.kind != quantity):
        fitting = [symbol for symbol, one in UNITS.items() if one.kind == quantity]
        listed = ", ".join(f"`{symbol}`" for symbol in fitting)
        kinds = ", ".join(f"`{kind}`" for kind in dict.fromkeys(one.kind for one in UNITS.values()))
        hint = f"use one of {listed}" if listed else f"name a quantity: {kinds}"
        yield RULE.finding(unit.at, f"`{quantity}` can't be in `{unit}`",
                           "pages and prints would fall back to another unit", hint)  # fmt: skip


def _unit(name: Text) -> Iterator[Finding]:
    if find_unit(name) is None:
        near = nearest_units(name)
        close = " or ".join(f"`{symbol}`" for symbol in near)
        yield RULE.finding(
            name.at,
            f"unit `{name}` doesn't exist",
            "a reading in an unknown unit can't be compared with anything",
            f"did you mean {close}?" if close else "write a unit such as V, mA, ohm or kPa",
            edit=_edit(name, near),
        )


def _edit(name: Text, near: list[str]) -> Edit | None:
    """Return the edit for the one unit meant: `mAmps` looks like `amps`, a thousand times more."""
    meant = {ALIASES.get(one, one) for one in (*UNITS, *ALIASES) if is_typing_slip(name, one)}
    return edit_of(name, near[0]) if len(near) == 1 and meant == {near[0]} else None
