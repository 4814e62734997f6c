"""Circuits against textbook sums and properties that Ohm's law demands."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.trade.circuits import current, divider, parallel, series, voltage_drop
from builder.trade.mistake import Mistake

OHMS = st.fractions(min_value=Fraction(1, 1000), max_value=10**7, max_denominator=1000)


@pytest.mark.parametrize(
    ("ohms", "together"),
    [((120, 120), 60), ((120,), 120), ((120, 120, 120), 40), ((120,) * 4, 30), ((0, 120), 0),
     ((3, 6), 2), ((10, 15, 30), 5)],
)  # fmt: skip
def test_resistors_side_by_side(ohms, together):
    """Sums that any textbook has (1/R = 1/R1 + 1/R2 + ...)."""
    assert parallel(*ohms) == together


@given(st.lists(OHMS, min_size=1, max_size=6))
def test_side_by_side_is_below_the_smallest(ohms):
    """Another way for the current never raises the resistance, and the order plays no part."""
    together = parallel(*ohms)
    assert together <= min(ohms)
    assert together == parallel(*reversed(ohms))
    assert together >= min(ohms) / len(ohms)


@given(OHMS, OHMS)
def test_series_and_parallel_multiply(one, other):
    """For two resistors series times parallel is their product (textbook)."""
    assert series(one, other) * parallel(one, other) == one * other


def test_a_drop_and_the_current_that_makes_it():
    """20 mV across 5 milliohm is 4 A: the fuse method of finding a drain; V = I R."""
    assert current(Fraction(20, 1000), Fraction(5, 1000)) == 4
    assert voltage_drop(4, Fraction(5, 1000)) == Fraction(20, 1000)


def test_a_sensor_in_its_divider():
    """5 V over 2.2 k and a 10 k sensor is 4.098 V; open it is 5 V, shorted 0 V (textbook)."""
    assert float(divider(5, 2200, 10000)) == pytest.approx(4.098, abs=5e-4)
    assert divider(5, 2200, 0) == 0
    assert float(divider(5, 2200, 10**12)) == pytest.approx(5)


@given(OHMS, OHMS)
def test_the_divider_is_the_drop_of_its_current(top, bottom):
    """Kirchhoff: the middle stands at the drop of the common current over the lower resistor."""
    amperes = current(5, series(top, bottom))
    assert divider(5, top, bottom) == voltage_drop(amperes, bottom)


@pytest.mark.parametrize(
    "found",
    [parallel(), parallel(5, -1), series(), series(-1), divider(5, 0, 0), divider(5, -1, 2),
     divider(5, 3, -1), current(5, 0), current(5, -1)],
)  # fmt: skip
def test_sums_without_an_answer_say_so(found):
    """What has no resistance, or less than none, is answered in words."""
    assert isinstance(found, Mistake)
    assert len(found.message) > 20


def test_zero_ohm_is_allowed_where_it_means_something():
    """A short is a resistance of zero, in series as in a divider."""
    assert series(0, 5) == 5
    assert divider(5, 0, 2) == 5
