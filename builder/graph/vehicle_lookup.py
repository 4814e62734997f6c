"""What a step needs of a vehicle, from the vehicle's own file; and whether a scope names it.

In: where a step works, and the vehicle. Out: the pins and fuses that are meant, as the page, the
prints and the walk show them. What the vehicle's file doesn't have is left out.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from builder.model.tree import Scope, Where
from builder.model.vehicle_data import Connector, Fuse, Pin, Vehicle


@dataclass(frozen=True, slots=True)
class PinPlace:
    """One pin to find: its connector, and the fuse in its circuit where one is known."""

    connector: Connector
    pin: Pin
    fuse: Fuse | None


def pins_at(where: Where, vehicle: Vehicle) -> tuple[PinPlace, ...]:
    """Return the pins that a step names, by role or by number; of one role, all of them."""
    wanted = set(map(str, where.pins))
    if where.connector:
        connector = vehicle.connectors.get(str(where.connector))
        pins = connector.pins.values() if connector else ()
        found = ((connector, pin) for pin in pins if connector and str(pin.number) in wanted)
    else:
        found = (
            (connector, pin)
            for connector, pin in pins_of(str(where.part or ""), vehicle)
            if str(pin.role) in wanted
        )
    return tuple(PinPlace(connector, pin, _fuse(pin, vehicle)) for connector, pin in found)


def fuses_at(where: Where, vehicle: Vehicle) -> tuple[Fuse, ...]:
    """Return the fuses of a part: those of its power pins, each once."""
    pins = (pin for _, pin in pins_of(str(where.fuse or ""), vehicle) if pin.role == "power")
    fuses = (_fuse(pin, vehicle) for pin in pins)
    return tuple(dict.fromkeys(fuse for fuse in fuses if fuse))


def pins_of(part: str, vehicle: Vehicle) -> Iterator[tuple[Connector, Pin]]:
    """Yield every pin of a part, in the order of the vehicle's file."""
    for connector in vehicle.connectors.values():
        if connector.of == part:
            yield from ((connector, pin) for pin in connector.pins.values())


def names_vehicle(applies_to: Iterable[Scope], vehicle: Vehicle) -> bool:
    """Return whether one of these scopes is about a vehicle."""
    return any(_overlap(scope, vehicle.scope) for scope in applies_to)


def _overlap(one: Scope, other: Scope) -> bool:
    if (one.make, one.model) != (other.make, other.model):
        return False
    if not one.years or not other.years:
        return True
    return one.years[0] <= other.years[1] and other.years[0] <= one.years[1]


def _fuse(pin: Pin, vehicle: Vehicle) -> Fuse | None:
    return vehicle.fuses.get(str(pin.fuse)) if pin.fuse else None
