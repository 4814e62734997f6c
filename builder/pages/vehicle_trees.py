"""The trees for a vehicle, each with what it takes from the vehicle's file.

In: the catalog of trees, a vehicle. Out: `VehicleTrees`: pins that trees ask for, and values.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from builder.graph.vehicle_lookup import fuses_at, names_vehicle, pins_at
from builder.model.library import Library
from builder.model.summary import Lookup, TreeSummary
from builder.model.text import Text
from builder.model.tree import Where
from builder.model.vehicle_data import Vehicle
from builder.pages.tree_catalog import TreeCatalog
from builder.wording.connector_words import color_text, connector_name, fuse_text, good_text
from builder.wording.value_text import torque_text

MOST = 6  # values beside the name of a tree; its steps have them all
ORDER = ("spec", "torque", "number", "role", "fuse")  # of the values beside a tree


@dataclass(frozen=True, slots=True)
class TreeOnVehicle:
    """A tree with the values of one vehicle."""

    tree: TreeSummary
    values: tuple[str, ...]
    more: int  # values that aren't listed


@dataclass(frozen=True, slots=True)
class VehicleTrees:
    """The trees that apply to a vehicle."""

    with_values: tuple[TreeOnVehicle, ...]  # those for it alone first
    others: tuple[TreeSummary, ...]  # for any vehicle, with nothing from its file
    pins: frozenset[tuple[str, str]]  # that trees ask for: connector and number


def vehicle_trees(catalog: TreeCatalog, vehicle: Vehicle) -> VehicleTrees:
    """Sort the trees that apply to a vehicle."""
    named = [tree for tree in catalog.trees if names_vehicle(tree.applies_to, vehicle)]
    every = [*named, *(tree for tree in catalog.trees if not tree.applies_to)]
    on_it = [_on_vehicle(tree, vehicle, catalog.library) for tree in every]
    return VehicleTrees(
        tuple(one for one in on_it if one.values or one.tree in named),
        tuple(one.tree for one in on_it if not one.values and one.tree not in named),
        frozenset(
            (str(place.connector.id), str(place.pin.number))
            for tree in every
            for lookup in tree.lookups
            for place in pins_at(_place(lookup), vehicle)
        ),
    )


def _on_vehicle(tree: TreeSummary, vehicle: Vehicle, library: Library) -> TreeOnVehicle:
    ordered = sorted(tree.lookups, key=lambda lookup: ORDER.index(lookup.kind))
    texts = (text for lookup in ordered for text in _values(lookup, vehicle, library))
    values = tuple(dict.fromkeys(texts))
    return TreeOnVehicle(tree, values[:MOST], len(values[MOST:]))


def _values(lookup: Lookup, vehicle: Vehicle, library: Library) -> Iterator[str]:
    """Yield what the vehicle's file has for something that a tree takes."""
    if lookup.kind == "spec" and lookup.of in vehicle.specs and lookup.of in library.specs:
        good = vehicle.specs[lookup.of].good
        spec = library.specs[lookup.of]
        yield f"{spec.text} {good_text(good.by_load.get(lookup.what, good), spec.unit)}"
    if lookup.kind == "torque" and lookup.of in vehicle.torques:
        torque = vehicle.torques[lookup.of]
        yield f"{torque.id.replace('-', ' ')} {torque_text(torque.newton_meters)}"
    for one in pins_at(_place(lookup), vehicle):
        color = f" {color_text(one.pin.wire)}" if one.pin.wire else ""
        yield f"{connector_name(one.connector, library)} pin {one.pin.number}{color}"
    yield from map(fuse_text, fuses_at(_place(lookup), vehicle))


def _place(lookup: Lookup) -> Where:
    """Return where a lookup is; nowhere for a spec or a torque."""
    of, what = Text(lookup.of), Text(lookup.what)
    match lookup.kind:
        case "role":
            return Where(of.at, part=of, pins=(what,))
        case "number":
            return Where(of.at, connector=of, pins=(what,))
        case "fuse":
            return Where(of.at, fuse=of)
    return Where(of.at)
