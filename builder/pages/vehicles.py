"""The vehicles that the shop sees, and the trees and records about each.

In: the catalog of trees. Out: `Page`s.
"""

from collections.abc import Iterator

from builder.model.module_record import Module
from builder.model.vehicle_data import Vehicle
from builder.pages import addresses
from builder.pages.page import Page
from builder.pages.render import render
from builder.pages.tree_catalog import TreeCatalog, names_vehicle, scopes_overlap
from builder.wording.value_text import scope_text


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
        )
        yield Page(path, scope_text(vehicle.scope), body)


def _modules(catalog: TreeCatalog, vehicle: Vehicle) -> list[Module]:
    return [
        module
        for module in catalog.library.modules.values()
        if any(scopes_overlap(scope, vehicle.scope) for scope in module.applies_to)
    ]
