"""The vehicles that a tree is for.

In: a tree's scopes and the shop's vehicles. Out: the vehicles whose files its data comes from.
"""

from collections.abc import Iterable, Mapping

from builder.graph.vehicle_lookup import names_vehicle
from builder.model.tree import Scope
from builder.model.vehicle_data import Vehicle


def vehicles_of(
    applies_to: Iterable[Scope], vehicles: Mapping[str, Vehicle]
) -> tuple[Vehicle, ...]:
    """Return every vehicle that a tree covers; of a tree for any vehicle, all of them."""
    scopes = tuple(applies_to)
    every = tuple(vehicles.values())
    return tuple(v for v in every if names_vehicle(scopes, v)) or every


def is_for_one(applies_to: Iterable[Scope], vehicles: Mapping[str, Vehicle]) -> Vehicle | None:
    """Return the vehicle of a tree that is for one vehicle only."""
    scopes = tuple(applies_to)
    if not scopes:
        return None
    covered = [v for v in vehicles.values() if names_vehicle(scopes, v)]
    return covered[0] if len(covered) == 1 and len(scopes) == 1 else None
