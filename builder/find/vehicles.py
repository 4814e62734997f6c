"""The vehicle in what a person typed: make, model, year, or a vehicle number.

In: a text or its words, and the vehicles of the shop. Out: `AskedVehicle`, and the rest. The check
digit and the model year of a number are worked out in `trade/`. Mirrored by
`web/search-words.js`.
"""

import re
from collections.abc import Container, Sequence
from dataclasses import dataclass

from builder.find.rows import VehicleRow
from builder.find.words import surfaces
from builder.trade.mistake import Mistake
from builder.trade.vin import check_digit, model_years, parse_vin

_NUMBER = re.compile(r"(?<![a-z0-9])(?=[a-z]*[0-9])[a-z0-9]{17}(?![a-z0-9])", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class AskedVehicle:
    """A vehicle as asked for; what is empty was not said."""

    make: tuple[str, ...] = ()  # folded words
    model: tuple[str, ...] = ()  # folded words, perhaps only the first of the name
    years: tuple[int, ...] = ()  # any of them
    number: str = ""
    number_says: str = ""  # right | wrong check digit | wrong signs

    def __bool__(self) -> bool:
        """Whether anything was said."""
        return bool(self.make or self.model or self.years or self.number)


def number_in(text: str) -> tuple[AskedVehicle, str]:
    """The first vehicle number of a text, what it says, and the text without it."""
    found = _NUMBER.search(text)
    if not found:
        return AskedVehicle(), text
    rest = text[: found.start()] + " " + text[found.end() :]
    number = parse_vin(found[0])
    if isinstance(number, Mistake):
        return AskedVehicle(number=found[0].upper(), number_says="wrong signs"), rest
    right = check_digit(number.text) == number.text[8]
    says = "right" if right else "wrong check digit"
    return AskedVehicle((), (), model_years(number), number.text, says), rest


def named_in(
    words: Sequence[str], vehicles: Sequence[VehicleRow], spoken: Container[str]
) -> tuple[tuple[str, ...], tuple[str, ...], list[str]]:
    """Make and model among the words, and the other words.

    A model may be said by the first word of its name. A word that trees use too ("fell") is a model
    only beside its make.
    """
    rest = list(words)
    make = _first(rest, sorted({tuple(surfaces(vehicle.make)) for vehicle in vehicles}))
    names = {
        tuple(surfaces(vehicle.model))
        for vehicle in vehicles
        if not make or tuple(surfaces(vehicle.make)) == make
    }
    names |= {name[:1] for name in names}
    sure = [name for name in names if name and (make or len(name) > 1 or name[0] not in spoken)]
    model = _first(rest, sorted(sure, key=lambda name: (-len(name), name)))
    return make, model, rest


def _first(rest: list[str], names: Sequence[tuple[str, ...]]) -> tuple[str, ...]:
    """The first name that stands among the words; it is taken out of them."""
    for name in names:
        for at in range(len(rest) - len(name) + 1):
            if name and tuple(rest[at : at + len(name)]) == name:
                del rest[at : at + len(name)]
                return name
    return ()


def fits(asked: AskedVehicle, vehicle: VehicleRow) -> bool:
    """Whether a vehicle can be the one that was asked for."""
    model = tuple(surfaces(vehicle.model))
    return (
        asked.make in ((), tuple(surfaces(vehicle.make)))
        and asked.model == model[: len(asked.model)]
        and (
            not asked.years
            or not vehicle.first
            or any(vehicle.first <= year <= vehicle.last for year in asked.years)
        )
    )
