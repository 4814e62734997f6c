"""Which fuses of a vehicle feed a part, by the words under `feeds`.

In: a vehicle, a part and the library. Out: names of fuses.
"""

from builder.model.library import Library
from builder.model.vehicle_data import Vehicle


def fuses_of(vehicle: Vehicle, part: str, library: Library) -> list[str]:
    """Return the fuses whose `feeds` names the part, by its ID or one of its other names."""
    names = [*_names(part, library)]
    return [
        str(fuse.id)
        for fuse in vehicle.fuses.values()
        if fuse.feeds and any(name in f" {fuse.feeds.casefold()} " for name in names)
    ]


def _names(part: str, library: Library) -> set[str]:
    module, other = library.modules.get(part), library.parts.get(part)
    names = {part.replace("-", " ")}
    names |= {str(module.name), *map(str, module.also_called)} if module else set()
    names |= {str(other.name), *map(str, other.also_called)} if other else set()
    return {f" {name.casefold()} " for name in names}
