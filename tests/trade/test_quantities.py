"""Readings as people type them, and both systems side by side."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.trade.mistake import Mistake
from builder.trade.quantities import (
    _OTHER_SYSTEM,
    OverRange,
    Quantity,
    convert_quantity,
    format_quantity,
    parse_quantity,
    side_by_side,
)
from builder.trade.units import UNITS, same_kind


@pytest.mark.parametrize(
    ("typed", "wanted", "value", "symbol"),
    [
        ("5,1 V", "V", "5.1", "V"),
        ("12.60", "V", "12.60", "V"),
        ("350 mV", "V", "0.350", "V"),
        ("0.35kΩ", "ohm", "350", "ohm"),
        ("0,350", "V", "0.350", "V"),
        ("32 psi", None, "32", "psi"),
        ("32 psi", "kPa", "221", "kPa"),
        ("-40 °F", "C", "-40.0", "°C"),
        ("80 lb-ft", "Nm", "108", "Nm"),
        ("−3", "V", "-3", "V"),
        ("+3 V", "V", "3", "V"),
        (".5 V", "V", "0.5", "V"),
        ("5. V", "V", "5", "V"),
        ("1 200 rpm", "rpm", "1200", "rpm"),
        ("1\u202f200,5 rpm", "rpm", "1200.5", "rpm"),
        ("50%", "%", "50", "%"),
        ("60 1/min", "rpm", "60", "rpm"),
    ],
)
def test_what_people_type(typed, wanted, value, symbol):
    """A typed reading keeps the digits it was read with, in the unit that is wanted."""
    read = parse_quantity(typed, wanted)
    assert isinstance(read, Quantity)
    assert (str(read.value), read.unit) == (value, symbol)


@pytest.mark.parametrize("typed", ["OL", "ol", "O.L", "0L", "0.L", ".OL", "OL ohm", "OL kΩ", "∞"])
def test_over_the_range_in_all_its_spellings(typed):
    """Instruments show the same state in many ways; all of them are no number."""
    assert isinstance(parse_quantity(typed, "ohm"), OverRange)


@pytest.mark.parametrize(
    ("typed", "wanted", "says"),
    [
        ("1,200 rpm", "rpm", "type 1.200 or 1200"),
        ("12.6.5", "V", "12.6.5: two numbers"),
        ("12 6", "V", "two numbers"),
        ("12.6/12.4 V", "V", "two numbers"),
        ("1e3", "V", "1e3: write the number out"),
        ("", "V", "no reading"),
        ("V", "V", "no reading"),
        ("12.60", None, "the unit is missing"),
        ("12 MV", "V", "did you mean mV"),
        ("12 furlong", None, "no unit in use"),
        ("5 °C", "V", "measures temperature; this reading is wanted in V"),
        ("80 Nm", "Wh", "measures torque"),
        ("OL V", "ohm", "measures voltage"),
        ("OL furlong", "ohm", "no unit in use"),
        ("-OL", "V", "below zero"),
        ("12", "furlong", "no unit in use"),
    ],
)
def test_what_is_wrong_is_said(typed, wanted, says):
    """A reading that cannot be taken is answered with what is wrong and what to type."""
    found = parse_quantity(typed, wanted)
    assert isinstance(found, Mistake)
    assert says in found.message


def test_one_likely_unit_is_offered_for_a_mend():
    """One near unit can be taken over at a touch; of several the person chooses."""
    assert parse_quantity("12 MV", "V").instead == "mV"
    assert parse_quantity("12 mohms", "ohm").instead is None


@given(st.text(max_size=15), st.sampled_from(["V", "°C", "kPa", None]))
def test_any_text_gets_an_answer(typed, wanted):
    """No typed text brings the parser down."""
    assert isinstance(parse_quantity(typed, wanted), Quantity | OverRange | Mistake)


CONVERTIBLE = [(a, b) for a in UNITS for b in UNITS if same_kind(a, b)]


@given(
    value=st.decimals(-9999, 9999, places=2),
    pair=st.sampled_from([pair for pair in CONVERTIBLE if pair[0] != pair[1]]),
)
def test_conversion_keeps_the_digits_of_the_instrument(value, pair):
    """Going to another unit and back to the old step gives the very reading."""
    one, other = pair
    there = convert_quantity(Quantity(value, one), other)
    back = convert_quantity(there, one)
    assert round(back.value, 2) == value


def test_conversion_invents_no_digits():
    """The new step is the next power of ten at or below the old one, never finer than that."""
    assert convert_quantity(Quantity(Decimal("32"), "psi"), "kPa").value == 221
    assert str(convert_quantity(Quantity(Decimal("220"), "kPa"), "psi").value) == "31.9"
    assert str(convert_quantity(Quantity(Decimal("2.2"), "bar"), "psi").value) == "32"
    assert str(convert_quantity(Quantity(Decimal("0.35"), "mm"), "in").value) == "0.0138"
    assert str(convert_quantity(Quantity(Decimal("12.60"), "V"), "mV").value) == "12600"
    assert str(convert_quantity(Quantity(Decimal("3E+2"), "ohm"), "kohm").value) == "0.300"


SHOP = {"pressure": "kPa", "torque": "Nm", "temperature": "C", "distance": "km"}
OTHER_SHOP = {"pressure": "bar", "torque": "lb-ft", "temperature": "F", "distance": "mi"}


@pytest.mark.parametrize(
    ("value", "symbol", "here", "there"),
    [
        ("32", "psi", "221 kPa (32 psi)", "2.21 bar (32 psi)"),
        ("220", "kPa", "220 kPa (31.9 psi)", "2.20 bar (220 kPa)"),
        ("80", "lb-ft", "108 N·m (80 lb-ft)", "80 lb-ft (108 N·m)"),
        ("100", "°C", "100 °C (212 °F)", "212 °F (100 °C)"),
        ("5", "K", "5 K (9 Δ°F)", "5 K (9 Δ°F)"),
        ("0.35", "mm", "0.35 mm (0.0138 in)", "0.35 mm (0.0138 in)"),
        ("50", "mi", "80 km (50 mi)", "50 mi (80 km)"),
        ("50", "mph", "50 mph (80 km/h)", "50 mph (80 km/h)"),
        ("12.6", "V", "12.6 V", "12.6 V"),
        ("3", "furlong", "3 furlong", "3 furlong"),
    ],
)
def test_both_systems_side_by_side(value, symbol, here, there):
    """The shop's unit comes first, the other system in brackets; volts are volts everywhere."""
    quantity = Quantity(Decimal(value), symbol)
    assert side_by_side(quantity, SHOP) == here
    assert side_by_side(quantity, OTHER_SHOP) == there


def test_an_unfit_unit_of_the_shop_is_passed_over():
    """A shop that sets volts for its pressures still gets its reading shown."""
    assert side_by_side(Quantity(Decimal(32), "psi"), {"pressure": "V"}) == "32 psi (221 kPa)"


def test_the_decimal_mark_is_the_shops():
    """A shop that writes commas reads commas; a minus is a minus sign."""
    assert format_quantity(Quantity(Decimal("-12.60"), "V"), "comma") == "−12,60 V"
    assert format_quantity(Quantity(Decimal("-12.60"), "V")) == "−12.60 V"


def test_the_other_system_measures_the_same():
    """Each unit's partner is of its own kind and another unit."""
    for one, other in _OTHER_SYSTEM.items():
        assert same_kind(one, other)
        assert one != other
