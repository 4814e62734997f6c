"""The same minutes are the same hours wherever they are printed."""

import re
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.walk.job_minutes import minutes_and_hours


@pytest.mark.parametrize(
    ("minutes", "text"),
    [
        (57, "57 min (1.0 h)"),  # 0.95 h
        (63, "63 min (1.1 h)"),  # 1.05 h
        (28, "28 min (0.5 h)"),  # 0.47 h
        (2, "2 min"),  # no hours that say nothing
    ],
)
def test_worked_hours(minutes: int, text: str) -> None:
    """Own arithmetic: rounded half up to the tenth of an hour."""
    assert minutes_and_hours(Decimal(minutes)) == text


@given(st.integers(0, 6000))
def test_hours_are_off_by_half_a_tenth_at_most(minutes: int) -> None:
    """Half of a tenth of an hour is 3 min."""
    hours = re.fullmatch(r"\d+ min(?: \((\d+\.\d) h\))?", minutes_and_hours(Decimal(minutes)))
    assert hours
    assert abs(Decimal(hours[1] or 0) * 60 - minutes) <= 3
