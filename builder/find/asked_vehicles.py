"""The vehicle in what a person typed: make, model, year, or a vehicle number.

In: a text or its words, and the vehicles of the shop. Out: `AskedVehicle`, and the rest. The check
digit and the model year of a number are worked out in `trade/`; the page does the same with the
tables from there (`search-query.js`).
"""

import re
from collections.abc import Container, Sequence
from dataclasses import dataclass

from builder.find.search_table import VehicleRow
from builder.find.word_forms import split_words
from builder.trade.mistake import Mistake
from builder.trade.vin import check_digit, model_years, parse_vin

WRITTEN_NUMBER = r"(?<![a-z0-9])(?=[a-z]*[0-9])[a-z0-9]{17}(?![a-z0-9])"
_WRITTEN_NUMBER = re.compile(WRITTEN_NUMBER, re.IGNORECASE)

FoldedWords = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class AskedVehicle:
    """A vehicle as asked for; what is empty was not given."""

    make: FoldedWords = ()  # folded words
    model: FoldedWords = ()  # folded words, perhaps only the first of the name
    years: tuple[int, ...] = ()  # any of them
    number: str = ""
    number_check: str = ""  # right | wrong check digit | wrong characters

    def __bool__(self) -> bool:
        """Whether anything was given."""
        return bool(self.make or self.model or self.years or self.number)


def read_vehicle_number(text: str) -> tuple[AskedVehicle, str]:
    """The first vehicle number of a text, what it says, and the text without it."""
    match = _WRITTEN_NUMBER.search(text)
    if not match:
        return AskedVehicle(), text
    rest = text[: match.start()] + " " + text[match.end() :]
    number = parse_vin(match[0])
    if isinstance(number, Mistake):
        return AskedVehicle(number=match[0].upper(), number_check="wrong characters"), rest
    right = check_digit(number.text) == number.text[8]
    check = "right" if right else "wrong check digit"
    return AskedVehicle((), (), model_years(number), number.text, check), rest


def read_vehicle_name(
    words: Sequence[str], vehicles: Sequence[VehicleRow], spoken: Container[str]
) -> tuple[FoldedWords, FoldedWords, list[str]]:
    """Make and model among the words, and the other words.

    A model may be named by the first word of its name. A word that trees use too ("fell") is a
    model only beside its make.
    """
    rest = list(words)
    make = _take_first(rest, [make_words(vehicle) for vehicle in vehicles])
    models = [model_words(one) for one in vehicles if make in ((), make_words(one))]
    names = [name for model in models for name in (model, model[:1])]
    sure = [name for name in names if name and (make or len(name) > 1 or name[0] not in spoken)]
    model = _take_first(rest, sorted(sure, key=len, reverse=True))
    return make, model, rest


def _take_first(rest: list[str], names: Sequence[FoldedWords]) -> FoldedWords:
    """The first name that stands among the words; it leaves them."""
    for name in names:
        for at in range(len(rest)):
            if name and tuple(rest[at : at + len(name)]) == name:
                del rest[at : at + len(name)]
                return name
    return ()


def make_words(vehicle: VehicleRow) -> FoldedWords:
    """The make as it would be typed."""
    return tuple(split_words(vehicle.make))


def model_words(vehicle: VehicleRow) -> FoldedWords:
    """The model as it would be typed."""
    return tuple(split_words(vehicle.model))


def vehicle_fits(asked: AskedVehicle, vehicle: VehicleRow) -> bool:
    """Whether a vehicle can be the one that was asked for."""
    return (
        asked.make in ((), make_words(vehicle))
        and asked.model == model_words(vehicle)[: len(asked.model)]
        and (
            not asked.years
            or not vehicle.first
            or any(vehicle.first <= year <= vehicle.last for year in asked.years)
        )
    )
