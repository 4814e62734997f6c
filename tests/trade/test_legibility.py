"""Sizes of letters against NUREG-0700."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.trade.legibility import (
    LEAST_MINUTES,
    PREFERRED_MINUTES,
    capital_height,
    reading_distance,
    visual_angle,
)


@given(st.floats(0.3, 10), st.floats(10, 60))
def test_both_forms_agree(metres, minutes):
    """NUREG-0700 rev. 2, 1.3.1-4 writes h = 6.283 d (MA) / 21600; it agrees within 4e-5."""
    theirs = 6.283 * metres * 1000 * minutes / 21600
    assert capital_height(metres, minutes) == pytest.approx(theirs, rel=6e-5)


@pytest.mark.parametrize(
    ("minutes", "millimetres"),
    [(15, 8.73), (16, 9.31), (18, 10.47), (20, 11.64), (22, 12.80), (24, 13.96)],
)
def test_capitals_for_two_metres(minutes, millimetres):
    """Heights at 2 m, calculated from the formula by hand."""
    assert capital_height(2, minutes) == pytest.approx(millimetres, abs=0.005)


def test_the_limits_of_the_guideline():
    """16 minutes at least and 20 preferred for reading (NUREG-0700 rev. 2)."""
    assert (LEAST_MINUTES, PREFERRED_MINUTES) == (16, 20)
    assert capital_height(2) == capital_height(2, 20)
    assert reading_distance(10) == reading_distance(10, 20)


@given(st.floats(0.3, 10), st.floats(10, 60))
def test_height_distance_and_angle_belong_together(metres, minutes):
    """Any of the three follows from the other two."""
    height = capital_height(metres, minutes)
    assert reading_distance(height, minutes) == pytest.approx(metres)
    assert visual_angle(height, metres) == pytest.approx(minutes)
