"""The vehicle in a query."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.find.asked_vehicles import (
    AskedVehicle,
    read_vehicle_name,
    read_vehicle_number,
    vehicle_fits,
)
from builder.find.search_table import VehicleRow
from builder.trade.vin import check_digit

VEHICLES = (
    VehicleRow("Brindal", "Fell", 2008, 2019),
    VehicleRow("Corvane", "Heron", 2009, 2014),
    VehicleRow("Corvane", "Heron Hybrid", 2018, 2023),
    VehicleRow("Corvane", "Tern", 2017, 2022),
)
# Invented: they begin with 0, which no region has (from memory, ISO 3780).
NUMBERS = ["0ZZAB1C07A0000001", "0ZZAB1DE0S0123456", "0ZZAB13E9S0123456", "0ZZRP5RP5T0099999"]


@pytest.mark.parametrize(
    ("words", "make", "model", "rest"),
    [
        ("tern no crank", "", "tern", "no crank"),
        ("corvane tern no crank", "corvane", "tern", "no crank"),
        ("corvane heron hybrid cold", "corvane", "heron hybrid", "cold"),
        ("heron cold", "", "heron", "cold"),
        ("brindal fell cold", "brindal", "fell", "cold"),
        ("fell silent", "", "", "fell silent"),
        ("brindal tern", "brindal", "", "tern"),
        ("nothing named", "", "", "nothing named"),
    ],
)
def test_make_and_model_are_found(words: str, make: str, model: str, rest: str) -> None:
    """A model is found by its name or its first word; a common word only beside its make."""
    found = read_vehicle_name(words.split(), VEHICLES, {"fell", "silent"})
    assert (" ".join(found[0]), " ".join(found[1]), " ".join(found[2])) == (make, model, rest)


def test_a_vehicle_fits_what_was_said_and_no_more() -> None:
    """What was not said does not narrow; a year must lie between first and last, ends included."""

    def fitting(asked: AskedVehicle) -> list[str]:
        return [vehicle.model for vehicle in VEHICLES if vehicle_fits(asked, vehicle)]

    assert fitting(AskedVehicle(make=("corvane",))) == ["Heron", "Heron Hybrid", "Tern"]
    assert fitting(AskedVehicle(model=("heron",))) == ["Heron", "Heron Hybrid"]
    assert fitting(AskedVehicle(years=(2008,))) == ["Fell"]
    assert fitting(AskedVehicle(years=(2017, 1987))) == ["Fell", "Tern"]
    assert len(fitting(AskedVehicle())) == len(VEHICLES)
    assert vehicle_fits(AskedVehicle(years=(1999,)), VehicleRow("Any", "Year", 0, 0))


@pytest.mark.parametrize("number", NUMBERS)
def test_a_vehicle_number_is_checked(number: str) -> None:
    """Check digit and model year after 49 CFR 565.15; any other check digit is doubted."""
    asked, rest = read_vehicle_number(f"brakes {number.lower()} soft")
    assert asked.number_check == "right"
    assert len(asked.years) == 2
    assert rest.split() == ["brakes", "soft"]
    other = "1" if number[8] != "1" else "2"
    assert (
        read_vehicle_number(number[:8] + other + number[9:])[0].number_check == "wrong check digit"
    )
    assert read_vehicle_number("O" + number[1:])[0].number_check == "wrong characters"


SIGNS = "0123456789ABCDEFGHJKLMNPRSTUVWXYZ"


@given(number=st.text(SIGNS, min_size=17, max_size=17))
def test_the_check_digit_is_that_of_a_reference_library(number: str) -> None:
    """The library `vin` works out the same digit for any seventeen signs."""
    reference = pytest.importorskip("vin").VIN.calculate_check_digit(number)
    assert check_digit(number) == reference


def test_the_page_works_out_the_same(page_words: Any) -> None:
    """The page's check digit, years and names are those of the command."""
    texts = [*NUMBERS, *("1" * 8 + sign + "1" * 8 for sign in SIGNS), "I" * 9 + "1" * 8, "short 1"]
    found = page_words(
        "(texts) => texts.map((text) => baytreeSearch.readVehicleNumber(text)[0])", texts
    )
    for text, page in zip(texts, found, strict=True):
        asked, _ = read_vehicle_number(text)
        assert page["numberCheck"] == asked.number_check, text
        assert tuple(page["years"]) == asked.years
        assert page["number"] == asked.number
