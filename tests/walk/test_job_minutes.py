"""Hours add up as they are printed."""

from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from builder.walk.job_minutes import rounded_tenths


def test_a_worked_sum_of_rows() -> None:
    """Own arithmetic: 63 and 28 min are 1.05 and 0.47 h, 91 min is 1.52 h: 1.0 + 0.5 = 1.5."""
    assert rounded_tenths([Decimal(63), Decimal(28)]) == [10, 5]
    assert rounded_tenths([Decimal(73), Decimal(51)]) == [12, 9]  # 124 min is 2.07 h: 2.1


@given(st.lists(st.integers(0, 600).map(Decimal), min_size=1, max_size=5))
def test_rows_add_up_and_none_is_off_by_a_tenth(minutes: list[Decimal]) -> None:
    """The sum is right to half a tenth, and so is what stands above it."""
    rows = rounded_tenths(minutes)
    assert abs(sum(rows) - sum(minutes) / 6) <= Decimal("0.5")
    assert all(abs(row - one / 6) < 1 for row, one in zip(rows, minutes, strict=True))
