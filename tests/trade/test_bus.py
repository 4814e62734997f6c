"""CAN bus termination against ISO 11898-2 and plain arithmetic."""

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.trade.bus import NO_STATE, bus_state, bus_states, termination
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
    ("ohms", "state"),
    [
        (0, "shorted together"),
        ("2.5", "shorted together"),
        (5, "shorted together"),
        (30, "two extra terminators"),
        (40, "one extra terminator"),
        (54, "both terminators present"),
        (60, "both terminators present"),
        (66, "both terminators present"),
        (108, "one terminator missing"),
        (120, "one terminator missing"),
        (132, "one terminator missing"),
        (1000, "open circuit"),
        (20000, "open circuit"),
        ("5.1", "no match"),
        (20, "no match"),
        (48, "no match"),
        (80, "no match"),
        (400, "no match"),
        ("999.9", "no match"),
    ],
)
def test_a_reading_names_its_state(ohms, state):
    """60 is right, 120 lacks one, 40 has an extra one, near 0 is a short, kilohms are open."""
    assert state in bus_state(Fraction(ohms))


@given(st.integers(0, 14))
def test_states_never_overlap_below_fifteen_percent(percent):
    """Up to a tolerance of 14 % every state has its own ohms, in rising order."""
    states = bus_states(percent)
    for lower, upper in pairwise(states):
        assert lower.high < upper.low
    assert states[-1].high is None


# Worked by hand: n equal terminators in parallel read 120/n ohm, less or more by the tolerance.
@pytest.mark.parametrize(
    ("percent", "ohms", "names"),
    [
        (15, "34.2", "two extra terminators or one extra terminator"),  # 25.5-34.5 and 34-46
        (15, "33.9", "two extra terminators"),
        (15, "34.6", "one extra terminator"),
        (20, 48, "one extra terminator or both terminators present"),  # 32-48 and 48-72
        (34, 80, "both terminators present or one terminator missing"),  # 39.6-80.4 and 79.2-160.8
    ],
)
def test_a_reading_in_two_states_names_both(percent, ohms, names):
    """With loose resistors two states share some ohms; naming only one would mislead."""
    assert bus_state(Fraction(ohms), percent) == names


@given(st.integers(0, 99), st.decimals(0, 2000, places=1))
def test_every_state_that_a_reading_can_be_is_named(percent, ohms):
    """The answer is exactly the states whose range holds the reading, whatever the tolerance."""
    names = [
        one.name
        for one in bus_states(percent)
        if one.low <= Fraction(ohms) and (one.high is None or Fraction(ohms) <= one.high)
    ]
    answer = bus_state(ohms, percent)
    assert set(answer.split(" or ")) == set(names) if names else answer == NO_STATE


def test_bad_input_gets_a_sentence():
    """No terminator, an impossible tolerance, or a reading below zero is a mistake in words."""
    assert isinstance(termination(0), Mistake)
    assert isinstance(termination(2, tolerance_percent=101), Mistake)
    assert isinstance(bus_states(101), Mistake)
    assert isinstance(bus_state(60, 101), Mistake)
    assert "power" in bus_state(-1).message
