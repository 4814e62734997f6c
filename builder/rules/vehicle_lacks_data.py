"""A pin, fuse or torque that the vehicle's file doesn't have, in a tree for that vehicle alone.

A tree for any vehicle asks the tech once instead. A connector named by itself has its pin numbers
from one vehicle, so only a tree for one vehicle may name it.

Why: The walk shows no wire color and no place, and the tech probes the wrong pin.

Wrong:

    # kb/parts.yml
    alternator: {name: Alternator}
    # trees/charging/case.yml
    applies_to: [{make: Corvane, model: Tern, years: 2017-2022}]
    steps:
      sense:
        check: Is the sense pin corroded?
        at: {part: alternator, pins: [sense]}
        results: {yes: repair, no: all-good}

Right:

    # kb/parts.yml
    alternator: {name: Alternator}
    # trees/charging/case.yml
    steps:
      sense:
        check: Is the sense pin corroded?
        at: {part: alternator, pins: [sense]}
        results: {yes: repair, no: all-good}

Fix: Add the connector, its pins and fuses, or the torque to the vehicle's file in `kb/vehicles/`.
"""

from collections.abc import Iterator
from datetime import date

from builder.graph.vehicle_lookup import fuses_at, pins_at
from builder.model.ends import Fix
from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.text import Text
from builder.model.tree import Where
from builder.model.vehicle_data import Vehicle
from builder.rules.shared.close_names import suggestion
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.vehicles_of import is_for_one

RULE = Rule(
    name="vehicle-lacks-data",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="Data that the vehicle of a tree doesn't have.",
)
WHY = "the walk can't show the place, the wire, or the value"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for everything that a tree names and its one vehicle lacks."""
    vehicle = is_for_one(facts.tree.applies_to, facts.library.vehicles)
    for step in facts.steps:
        if step.where and vehicle:
            yield from _of_place(step.where, vehicle)
        elif step.where and step.where.connector:
            yield RULE.finding(
                step.where.connector.at, f"connector `{step.where.connector}` is of one vehicle",
                "on another vehicle these pins are something else",
                "name the part and the roles of its pins, or say the vehicle in `applies_to`",
            )  # fmt: skip
        if isinstance(step.body, Fix):
            yield from _torques(step.body.torques, facts.library, vehicle)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every fuse that a pin names and the vehicle's file doesn't have."""
    for vehicle in library.vehicles.values():
        pins = (pin for one in vehicle.connectors.values() for pin in one.pins.values())
        for pin in pins:
            if pin.fuse and pin.fuse not in vehicle.fuses:
                hint = suggestion(pin.fuse, vehicle.fuses, "add it under `fuses`")
                yield RULE.finding(pin.fuse.at, f"fuse `{pin.fuse}` isn't in this file", WHY, hint)
    for module in library.modules.values():
        if module.fit:
            yield from _torques(module.fit.torques, library, None)


def _of_place(where: Where, vehicle: Vehicle) -> Iterator[Finding]:
    if where.connector and where.connector not in vehicle.connectors:
        hint = suggestion(where.connector, vehicle.connectors, f"add it to {vehicle.file}")
        yield RULE.finding(where.connector.at, f"`{vehicle.id}` has no connector "
                           f"`{where.connector}`", WHY, hint)  # fmt: skip
        return
    known = {str(one.pin.number if where.connector else one.pin.role)
             for one in pins_at(where, vehicle)}  # fmt: skip
    for pin in where.pins:
        if str(pin) not in known:
            what = where.connector or where.part
            yield RULE.finding(pin.at, f"`{vehicle.id}` has no pin `{pin}` at `{what}`", WHY,
                               f"add it to {vehicle.file}, or correct the pin")  # fmt: skip
    if where.fuse and not where.fuse.startswith("<") and not fuses_at(where, vehicle):
        yield RULE.finding(where.fuse.at, f"`{vehicle.id}` has no fuse of `{where.fuse}`", WHY,
                           f"name the fuse at its power pin in {vehicle.file}")  # fmt: skip


def _torques(
    names: tuple[Text, ...], library: Library, vehicle: Vehicle | None
) -> Iterator[Finding]:
    vehicles = [vehicle] if vehicle else list(library.vehicles.values())
    known = {name for one in vehicles for name in one.torques}
    for name in names:
        if name not in known:
            place = vehicle.file if vehicle else "a vehicle's file in kb/vehicles/"
            hint = suggestion(name, known, f"add it under `torques` in {place}")
            yield RULE.finding(name.at, f"torque `{name}` isn't in {place}", WHY, hint)
