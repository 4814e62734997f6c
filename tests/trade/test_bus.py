"""Network termination against ISO 11898-2 and plain sums."""

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.trade.bus import bus_state, bus_states, termination
from builder.trade.mistake import Mistake


@pytest.mark.parametrize(
    ("percent", "low", "high"), [(1, "59.4", "60.6"), (5, "57", "63"), (10, "54", "66")]
)
def test_two_terminators_by_tolerance(percent, low, high):
    """Resistors of 1, 5 and 10 % give these bands (54 to 66: common practice, no source)."""
    assert termination(2, tolerance_percent=percent) == (Fraction(low), Fraction(high))
    assert termination(2) == (54, 66)


def test_the_limits_of_the_standard():
    """100 and 130 ohm, the least and most of ISO 11898-2 (from memory), give 50 and 65."""
    assert termination(2, 100, 0) == (50, 50)
    assert termination(2, 130, 0) == (65, 65)


@pytest.mark.parametrize(
    ("ohms", "says"),
    [
        (0, "shorted together"),
        ("2.5", "shorted together"),
        (5, "shorted together"),
        (30, "two terminators too many"),
        (40, "one terminator too many"),
        (54, "both terminators there"),
        (60, "both terminators there"),
        (66, "both terminators there"),
        (108, "one terminator missing"),
        (120, "one terminator missing"),
        (132, "one terminator missing"),
        (1000, "open"),
        (20000, "open"),
        ("5.1", "fits no state"),
        (20, "fits no state"),
        (48, "fits no state"),
        (80, "fits no state"),
        (400, "fits no state"),
        ("999.9", "fits no state"),
    ],
)
def test_what_a_reading_shows(ohms, says):
    """60 is whole, 120 lacks one, 40 has one too many, near 0 is a short, kilohms are open."""
    assert says in bus_state(Fraction(ohms))


@given(st.integers(0, 14))
def test_states_never_overlap(percent):
    """Up to a tolerance of 14 % every state has its own ohms, in rising order."""
    states = bus_states(percent)
    for lower, upper in pairwise(states):
        assert lower.high < upper.low
    assert states[-1].high is None


def test_what_has_no_answer_says_so():
    """No terminator, a silly tolerance, or a reading below zero is answered in words."""
    assert isinstance(termination(0), Mistake)
    assert isinstance(termination(2, tolerance_percent=101), Mistake)
    assert isinstance(bus_states(101), Mistake)
    assert isinstance(bus_state(60, 101), Mistake)
    assert "power off" in bus_state(-1).message
