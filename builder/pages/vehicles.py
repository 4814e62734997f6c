"""The vehicles that the shop sees: connectors, fuses, torques, specs, and the trees for each.

In: the catalog of trees. Out: `Page`s.
"""

from collections.abc import Iterator

from builder.graph.vehicle_lookup import names_vehicle
from builder.model.module_record import Module
from builder.model.vehicle_data import Spec, Vehicle
from builder.pages import addresses
from builder.pages.connectors import vehicle_connectors
from builder.pages.page import Page
from builder.pages.render import render
from builder.pages.tree_catalog import TreeCatalog
from builder.pages.vehicle_trees import vehicle_trees
from builder.wording.connector_words import good_text
from builder.wording.value_text import scope_text


def vehicle_pages(catalog: TreeCatalog) -> Iterator[Page]:
    """Yield the list of vehicles and the page of each."""
    vehicles = catalog.library.vehicles
    body = render("vehicles.html", "vehicles/index", vehicles=vehicles)
    yield Page("vehicles/index", "Vehicles", body)
    for id_, vehicle in vehicles.items():
        path = addresses.vehicle_path(id_)
        trees = vehicle_trees(catalog, vehicle)
        body = render(
            "vehicle.html",
            path,
            vehicle=vehicle,
            connectors=list(vehicle_connectors(vehicle, trees.pins, catalog.library)),
            trees=trees,
            modules=_modules(catalog, vehicle),
            specs=list(_specs(catalog, vehicle)),
        )
        yield Page(path, scope_text(vehicle.scope), body)


def _specs(catalog: TreeCatalog, vehicle: Vehicle) -> Iterator[tuple[Spec, str, str]]:
    """Yield what the vehicle's file says of specs: the spec, the good range, and its source."""
    for name, own in vehicle.specs.items():
        if spec := catalog.library.specs.get(name):
            yield spec, good_text(own.good, spec.unit), str(own.source or "")


def _modules(catalog: TreeCatalog, vehicle: Vehicle) -> list[Module]:
    modules = catalog.library.modules.values()
    return [module for module in modules if names_vehicle(module.applies_to, vehicle)]
