"""Which vehicle someone means, and whether a tree is for it.

In: words of the command line, the library. Out: a `Vehicle`, or a message.
"""

from builder.graph.vehicle_lookup import names_vehicle
from builder.model.library import Library, NotThereError
from builder.model.vehicle_data import Vehicle
from builder.rules.shared.close_names import suggestion
from builder.wording.sentences import joined
from builder.wording.value_text import scope_text


def vehicle_named(words: str, library: Library) -> Vehicle:
    """Return a vehicle by its ID, in any case. Raises NotThereError, with what was likely meant."""
    vehicles = library.vehicles
    if known := vehicles.get(words.lower().replace(" ", "-")):
        return known
    otherwise = "write its ID" if vehicles else "add its file: `baytree new vehicle NAME`"
    hint = suggestion(words, vehicles, otherwise)
    raise NotThereError(f"there is no vehicle `{words}` in kb/vehicles/; {hint}")


def refuse_other_vehicles(id_: str, vehicle: Vehicle, library: Library) -> None:
    """Raise NotThereError where a tree is for other vehicles: its pins and limits are theirs."""
    tree = library.trees.get(id_)
    if tree is None or not tree.applies_to or names_vehicle(tree.applies_to, vehicle):
        return
    every = library.vehicles.values()
    fitting = [one for one in every if names_vehicle(tree.applies_to, one)]
    instead = joined((f"`--vehicle {one.id}`" for one in fitting), "or")
    raise NotThereError(
        f"`{id_}` isn't for the {scope_text(vehicle.scope)}, it's for the "
        f"{joined(map(scope_text, tree.applies_to), 'or')}; "
        + (f"use {instead}" if fitting else "leave out `--vehicle`")
    )
