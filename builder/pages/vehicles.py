"""The vehicles that the shop sees, and what is written about each.

In: the catalogue. Out: `Page`s.
"""

from collections.abc import Iterator

from builder.model.knowledge import Module, Vehicle
from builder.pages import addresses
from builder.pages.catalogue import Catalogue, fits, meet
from builder.pages.page import Page
from builder.pages.render import render
from builder.wording import phrases


def vehicle_pages(catalogue: Catalogue) -> Iterator[Page]:
    """Yield the list of vehicles and the page of each."""
    vehicles = catalogue.library.vehicles
    body = render("vehicles.html", "vehicles/index", vehicles=vehicles)
    yield Page("vehicles/index", "Vehicles", body)
    for id_, vehicle in vehicles.items():
        path = addresses.vehicle(id_)
        body = render(
            "vehicle.html",
            path,
            vehicle=vehicle,
            own=[tree for tree in catalogue.trees if fits(tree, vehicle.scope)],
            any=sum(not tree.applies_to for tree in catalogue.trees),
            modules=_modules(catalogue, vehicle),
        )
        yield Page(path, phrases.scope(vehicle.scope), body)


def _modules(catalogue: Catalogue, vehicle: Vehicle) -> list[Module]:
    return [
        module
        for module in catalogue.library.modules.values()
        if any(meet(scope, vehicle.scope) for scope in module.applies_to)
    ]
