"""Sensor tables against the thermistor equation, plain sums and Python's logarithms."""

import math
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.trade.mistake import Mistake
from builder.trade.sensors import (
    interpolate,
    interpolate_back,
    interpolate_log,
    interpolate_log_back,
    rows_mistake,
)

# An invented part, by R = R25 exp(B (1/T - 1/298.15)) with 10 kohm and B = 3977 K (textbook).
THERMISTOR = [(-40, 412135), (-20, 107095), (0, 33900), (20, 12555), (25, 10000), (40, 5279),
              (60, 2463), (80, 1253), (100, 685), (120, 398)]  # fmt: skip
PRESSURE = [(Fraction("0.5"), 0), (Fraction("4.5"), 100)]  # ratiometric, common practice


def _thermistor(celsius: float) -> float:
    return 10_000 * math.exp(3977 * (1 / (celsius + 273.15) - 1 / 298.15))


@pytest.mark.parametrize(("celsius", "ohms"), THERMISTOR)
def test_rows_are_the_equation(celsius, ohms):
    """The rows are the thermistor equation, and both tables give a row back as it stands."""
    assert _thermistor(celsius) == pytest.approx(ohms, rel=1e-3)
    assert interpolate(THERMISTOR, celsius) == ohms
    assert float(interpolate_log(THERMISTOR, celsius)) == pytest.approx(ohms, rel=1e-25)


def test_between_far_rows_only_the_log_table_will_do():
    """At 30 degC between 20 and 40: true 8025 ohm, straight 8917 (+11 %), log 8141 (+1.4 %)."""
    rows = [(20, 12555), (40, 5279)]
    assert round(_thermistor(30)) == 8025
    assert interpolate(rows, 30) == 8917
    assert round(interpolate_log(rows, 30)) == 8141


@given(st.decimals(-40, 120, places=1))
def test_the_log_table_is_pythons_logarithm(celsius):
    """Interpolating the logarithms with the standard library gives the same ohms."""
    pairs = pairwise(THERMISTOR)
    (x1, y1), (x2, y2) = next(pair for pair in pairs if pair[1][0] >= celsius)
    share = (float(celsius) - x1) / (x2 - x1)
    expected = math.exp(math.log(y1) + share * (math.log(y2) - math.log(y1)))
    assert float(interpolate_log(THERMISTOR, celsius)) == pytest.approx(expected, rel=1e-12)


@given(st.decimals(-40, 120, places=2))
def test_backwards_is_the_inverse(celsius):
    """Looking the ohms up gives the temperature back, exactly on straight lines."""
    assert interpolate_back(THERMISTOR, interpolate(THERMISTOR, celsius)) == Fraction(celsius)
    back = interpolate_log_back(THERMISTOR, interpolate_log(THERMISTOR, celsius))
    assert abs(back - Fraction(celsius)) < Fraction(1, 10**20)


@given(st.decimals(-40, 120, places=2), st.decimals(-40, 120, places=2))
def test_a_falling_table_falls_everywhere(one, other):
    """Between the rows of a falling table no value rises."""
    low, high = sorted((one, other))
    tiny = Fraction(1, 10**15)
    assert interpolate(THERMISTOR, low) >= interpolate(THERMISTOR, high)
    assert interpolate_log(THERMISTOR, low) + tiny >= interpolate_log(THERMISTOR, high)


@pytest.mark.parametrize(
    ("volts", "psi"), [("2.0", "37.5"), ("2.5", "50"), ("0.5", "0"), ("4.5", "100")]
)
def test_a_ratiometric_sensor(volts, psi):
    """0.5 V is zero and 4.5 V full scale (common practice, no source)."""
    assert interpolate(PRESSURE, Fraction(volts)) == Fraction(psi)
    assert interpolate_back(PRESSURE, Fraction(psi)) == Fraction(volts)


@pytest.mark.parametrize(
    "look_up", [interpolate, interpolate_back, interpolate_log, interpolate_log_back]
)
def test_nothing_is_guessed_beyond_the_ends(look_up):
    """Outside its rows a table gives no value, and says from where to where it goes."""
    rows = [(1, 10), (2, 20)]
    for value in (0, 30):
        found = look_up(rows, value)
        assert isinstance(found, Mistake)
        assert "outside the table" in found.message
    assert interpolate(rows, 0).message == "0 is outside the table, which goes from 1 to 2"


@pytest.mark.parametrize(
    ("rows", "options", "says"),
    [
        ([(1, 2)], {}, "two rows"),
        ([], {}, "two rows"),
        ([(1, 2), (1, 3)], {}, "must rise"),
        ([(2, 2), (1, 3)], {}, "must rise"),
        ([(1, 0), (2, 3)], {"logarithmic": True}, "above zero"),
        ([(1, 3), (2, 3)], {"back": True}, "rise all the way"),
        ([(1, 3), (2, 5), (3, 4)], {"back": True}, "rise all the way"),
        ([(1, 3), (2, Fraction("3.5")), (3, Fraction("3.2"))], {"back": True}, "rise all the way"),
    ],
)
def test_unsound_rows_are_named(rows, options, says):
    """A table that cannot be read says why."""
    found = rows_mistake(rows, **options)
    assert found is not None
    assert says in found.message


def test_unsound_rows_give_no_value():
    """Each of the look-ups judges its own rows."""
    assert "rise" in interpolate([(2, 1), (1, 2)], 1).message
    assert "rise all the way" in interpolate_back([(1, 3), (2, 3)], 3).message
    assert "above zero" in interpolate_log([(1, 0), (2, 3)], 1).message
    assert "above zero" in interpolate_log_back([(1, 0), (2, 3)], 1).message
    assert "rise all the way" in interpolate_log_back([(1, 3), (2, 3)], 3).message
    assert rows_mistake([(1, 3), (2, 3)]) is None
    assert rows_mistake([(1, 3), (2, Fraction("3.5"))], back=True) is None
    assert rows_mistake([(1, Fraction("0.5")), (2, 3)], logarithmic=True) is None
