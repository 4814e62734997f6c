"""The vehicles that a tree is for.

In: a tree's scopes and the shop's vehicles. Out: the vehicles whose files its data comes from.
"""

from collections.abc import Iterable, Mapping

from builder.model.tree import Scope
from builder.model.vehicle_data import Vehicle


def vehicles_of(
    applies_to: Iterable[Scope], vehicles: Mapping[str, Vehicle]
) -> tuple[Vehicle, ...]:
    """Return every vehicle that a tree covers; of a tree for any vehicle, all of them."""
    scopes = tuple(applies_to)
    every = tuple(vehicles.values())
    return tuple(v for v in every if any(_covers(scope, v.scope) for scope in scopes)) or every


def is_for_one(applies_to: Iterable[Scope], vehicles: Mapping[str, Vehicle]) -> Vehicle | None:
    """Return the vehicle of a tree that is for one vehicle only."""
    scopes = tuple(applies_to)
    if not scopes:
        return None
    covered = [v for v in vehicles.values() if any(_covers(scope, v.scope) for scope in scopes)]
    return covered[0] if len(covered) == 1 and len(scopes) == 1 else None


def _covers(scope: Scope, vehicle: Scope) -> bool:
    if (scope.make, scope.model) != (vehicle.make, vehicle.model):
        return False
    if scope.years is None or vehicle.years is None:
        return True
    return scope.years[0] <= vehicle.years[1] and vehicle.years[0] <= scope.years[1]
