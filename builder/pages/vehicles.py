"""The vehicles that the shop sees, and the trees and records about each.

In: the catalog of trees. Out: `Page`s.
"""

from collections.abc import Iterator
from decimal import Decimal
from functools import partial

from builder.model.module_record import Module
from builder.model.vehicle_data import Spec, Vehicle
from builder.pages import addresses
from builder.pages.page import Page
from builder.pages.render import render
from builder.pages.tree_catalog import TreeCatalog, names_vehicle, scopes_overlap
from builder.trade.units import convert
from builder.wording.value_text import scope_text, unit_label
from builder.wording.vehicle_words import part_name


def vehicle_pages(catalog: TreeCatalog) -> Iterator[Page]:
    """Yield the list of vehicles and the page of each."""
    vehicles = catalog.library.vehicles
    body = render("vehicles.html", "vehicles/index", vehicles=vehicles)
    yield Page("vehicles/index", "Vehicles", body)
    for id_, vehicle in vehicles.items():
        path = addresses.vehicle_path(id_)
        body = render(
            "vehicle.html",
            path,
            vehicle=vehicle,
            named=[tree for tree in catalog.trees if names_vehicle(tree, vehicle.scope)],
            for_any=sum(not tree.applies_to for tree in catalog.trees),
            modules=_modules(catalog, vehicle),
            specs=list(_specs(catalog, vehicle)),
            part_name=partial(part_name, library=catalog.library),
            torque_text=torque_text,
        )
        yield Page(path, scope_text(vehicle.scope), body)


def _specs(catalog: TreeCatalog, vehicle: Vehicle) -> Iterator[tuple[Spec, str, str]]:
    """Yield what the vehicle's file says of specs: the spec, the good range, and its source."""
    for name, own in vehicle.specs.items():
        if spec := catalog.library.specs.get(name):
            yield spec, f"{own.good.text} {unit_label(spec.unit)}", str(own.source or "")


def torque_text(newton_meters: Decimal) -> str:
    """Write a torque in pound-feet first, as a torque wrench in the US has it."""
    return f"{round(convert(newton_meters, 'Nm', 'lb-ft'))} lb-ft ({newton_meters:f} N·m)"


def _modules(catalog: TreeCatalog, vehicle: Vehicle) -> list[Module]:
    return [
        module
        for module in catalog.library.modules.values()
        if any(scopes_overlap(scope, vehicle.scope) for scope in module.applies_to)
    ]
