"""The battery against the tables of the Battery Council International and plain sums."""

from fractions import Fraction
from inspect import signature

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.pages.calculator_forms import CALCULATOR_FORMS
from builder.trade.battery import (
    CHARGE_ROWS,
    drain_days,
    load_test_limit,
    state_of_charge,
)
from builder.trade.functions import FUNCTIONS
from builder.trade.mistake import Mistake


def _celsius(fahrenheit: int) -> Fraction:
    return Fraction(fahrenheit - 32) * 5 / 9


# Battery Council International, open-circuit voltage at 80 degF (seen on two pages).
@pytest.mark.parametrize(
    ("volts", "percent"),
    [("12.65", 100), ("12.45", 75), ("12.24", 50), ("12.06", 25), ("11.89", 0), ("12.15", "37.5"),
     ("6", 0), ("13.2", 100)],
)  # fmt: skip
def test_state_of_charge_from_open_circuit_voltage(volts, percent):
    """The rows of the table, a value between two of them, and the level ends."""
    assert state_of_charge(Fraction(volts)) == Fraction(percent)


def test_values_between_rows():
    """12.40 V at 80 degF is 69.05 % (interpolated by hand)."""
    assert float(state_of_charge(Fraction("12.40"))) == pytest.approx(69.05, abs=0.005)


# What sources give for the open-circuit voltage of six cells, as volts to add to the reading for
# each kelvin below 80 °F:
#   -0.0043  battery FAQ with the table of Battery Council International: subtract 0.024 V per 10 °F
#   +0.0043  the same FAQ's own example: a full battery reads 12.53 V at 30 °F, not 12.65 V
#   +0.0150  charging guide: each cell's equilibrium voltage rises 2.5 mV a kelvin
#   -0.0018  cell model of SAE 2007-01-0778 at half charge: falls 0.6 mV x (1 - charge) a kelvin
#   +0.0012  thermodynamics of the cell: rises about 0.2 mV a kelvin (from memory)
# The first four were seen in public pages and files. Both signs, sizes a factor of ten apart.
def test_charge_is_not_corrected_for_temperature_where_sources_disagree():
    """Charge takes the voltage alone, and the page says at what temperature its table holds."""
    assert list(signature(state_of_charge).parameters) == ["volts"]
    assert FUNCTIONS["battery_charge"].slots == ("V",)
    (form,) = (one for one in CALCULATOR_FORMS if one.id == "battery-charge")
    assert "80 °F" in form.assumes
    assert "disagree" in form.assumes


@given(st.decimals(7, 13, places=2), st.decimals(7, 13, places=2))
def test_more_volts_never_mean_less_state_of_charge(one, other):
    """Charge rises with voltage and stays between 0 and 100 %."""
    low, high = sorted((one, other))
    assert 0 <= state_of_charge(low) <= state_of_charge(high) <= 100


@pytest.mark.parametrize("volts", ["13.21", "14.4", "5.99", "-12.6"])
def test_another_voltage_gives_no_state_of_charge(volts):
    """A charging battery, a dead cell or swapped leads get no percentage."""
    assert isinstance(state_of_charge(Fraction(volts)), Mistake)


# SAE J537 / Battery Council International, from memory.
@pytest.mark.parametrize(
    ("fahrenheit", "volts"),
    [(150, "9.6"), (100, "9.6"), (70, "9.6"), (60, "9.5"), (50, "9.4"), (40, "9.3"), (30, "9.1"),
     (20, "8.9"), (10, "8.7"), (0, "8.5"), (-20, "8.5"), (-40, "8.5"), (65, "9.55"), (35, "9.2")],
)  # fmt: skip
def test_load_test_limits(fahrenheit, volts):
    """The least volts at 15 s under half the cold cranking rating, by temperature."""
    assert load_test_limit(_celsius(fahrenheit)) == Fraction(volts)


@pytest.mark.parametrize("fahrenheit", [-41, 151])
def test_no_limit_for_a_temperature_out_of_this_world(fahrenheit):
    """A mistyped temperature gets no limit."""
    assert isinstance(load_test_limit(_celsius(fahrenheit)), Mistake)


@pytest.mark.parametrize(("milliamperes", "days"), [(50, 25), (300, "25/6"), (25, 50), (1, 1250)])
def test_days_until_the_battery_is_dead(milliamperes, days):
    """60 Ah, half of it usable: 50 mA lasts 25 days, 300 mA 4.2 days (plain sums)."""
    assert drain_days(60, milliamperes) == Fraction(days)
    assert drain_days(60, milliamperes, 1) == 2 * Fraction(days)


def test_no_drain_no_days():
    """Without a drain there is nothing to divide by."""
    assert isinstance(drain_days(60, 0), Mistake)
    assert isinstance(drain_days(60, -5), Mistake)


def test_the_table_is_sound():
    """Both columns rise, or level out at the ends."""
    volts, percent = zip(*CHARGE_ROWS, strict=True)
    assert list(volts) == sorted(volts)
    assert list(percent) == sorted(percent)
