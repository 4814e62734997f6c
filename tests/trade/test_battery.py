"""The battery against the tables of the Battery Council International and plain sums."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.trade.battery import (
    CHARGE_ROWS,
    charge,
    drain_days,
    load_test_limit,
    rest_voltage_at_reference,
)
from builder.trade.mistake import Mistake


def _celsius(fahrenheit: int) -> Fraction:
    return Fraction(fahrenheit - 32) * 5 / 9


# Battery Council International, open-circuit voltage at 80 degF (seen on two pages).
@pytest.mark.parametrize(
    ("volts", "percent"),
    [("12.65", 100), ("12.45", 75), ("12.24", 50), ("12.06", 25), ("11.89", 0), ("12.15", "37.5"),
     ("6", 0), ("13.2", 100)],
)  # fmt: skip
def test_charge_from_rest_voltage(volts, percent):
    """The rows of the table, a value between two of them, and the level ends."""
    assert charge(Fraction(volts)) == Fraction(percent)


def test_values_between_rows():
    """12.40 V at 80 degF is 69.05 % (interpolated by hand)."""
    assert float(charge(Fraction("12.40"))) == pytest.approx(69.05, abs=0.005)


@pytest.mark.parametrize(
    ("fahrenheit", "volts"), [(40, "-0.096"), (0, "-0.192"), (120, "0.096"), (80, "0")]
)
def test_temperature_compensation(fahrenheit, volts):
    """0.024 V per 10 degF from 80 degF (the same source)."""
    corrected = rest_voltage_at_reference(Fraction("12.40"), _celsius(fahrenheit))
    assert corrected - Fraction("12.40") == Fraction(volts)


def test_a_cold_battery_holds_less_than_it_shows():
    """12.40 V at 40 degF counts as 12.304 V, which is 57.62 % (interpolated by hand)."""
    assert float(charge(Fraction("12.40"), _celsius(40))) == pytest.approx(57.62, abs=0.005)


@given(st.decimals(7, 13, places=2), st.decimals(7, 13, places=2))
def test_more_volts_never_mean_less_charge(one, other):
    """Charge rises with voltage and stays between 0 and 100 %."""
    low, high = sorted((one, other))
    assert 0 <= charge(low) <= charge(high) <= 100


@pytest.mark.parametrize("volts", ["13.21", "14.4", "5.99", "-12.6"])
def test_no_rest_voltage_no_charge(volts):
    """A charging battery, a dead cell or swapped leads get no percentage."""
    assert isinstance(charge(Fraction(volts)), Mistake)


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
def test_days_until_flat(milliamperes, days):
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
