"""How sure a reading is, against worked examples of a teaching laboratory."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.trade.instruments import (
    ABOVE,
    BELOW,
    TOO_CLOSE_TO_CALL,
    Accuracy,
    Instrument,
    error_of,
    parse_accuracy,
    side_of_limit,
    too_fine,
    too_narrow,
)
from builder.trade.mistake import Mistake

METER = Instrument(
    "V",
    Decimal(-600),
    Decimal(600),
    Decimal("0.01"),
    Accuracy(percent=Decimal("0.5"), fixed=Decimal("0.02")),
)


@pytest.mark.parametrize(
    ("text", "resolution", "reading", "error"),
    [
        # A university's tutorial on meter uncertainty: 2.5 % + 3 digits, last digit 0.01 V.
        ("2.5 % + 3 digits", "0.01", "32.00", "0.83"),
        ("2.5% + 3 digits", "0.01", "0.09", "0.03225"),
        # Repeated in many physics courses: 100.0 V at 2 % + 2 digits is 97.8 to 102.2 V.
        ("±(2 % + 2 digits)", "0.1", "100.0", "2.2"),
        ("0.5 % + 0.02", "0.01", "12.60", "0.083"),
        ("0.5 % + 0.02", "0.01", "-12.60", "0.083"),
        ("0.02", "0.01", "12.60", "0.02"),
        ("1 digit", "0.1", "12.6", "0.1"),
    ],
)
def test_the_error_of_a_reading(text, resolution, reading, error):
    """Percent counts from the reading, digits from the last place, the rest is fixed."""
    accuracy = parse_accuracy(text)
    assert isinstance(accuracy, Accuracy)
    meter = Instrument("V", Decimal(0), Decimal(600), Decimal(resolution), accuracy)
    assert error_of(meter, Decimal(reading)) == Decimal(error)


def test_without_a_stated_error_one_step_is_taken():
    """A display is never better than its last digit (common practice, no source)."""
    assert error_of(
        Instrument("V", Decimal(0), Decimal(20), Decimal("0.01")), Decimal(5)
    ) == Decimal("0.01")
    assert error_of(Instrument("V", Decimal(0), Decimal(20)), Decimal(5)) == 0


@pytest.mark.parametrize("text", ["", "x", "0.5 % +", "1 % + 2 %", "5 volts", "0,5 % + 2"])
def test_an_error_that_cannot_be_read_is_refused(text):
    """What is no error is answered with how one is written."""
    assert isinstance(parse_accuracy(text), Mistake)


@pytest.mark.parametrize(
    ("reading", "limit", "side"),
    [
        ("13.25", "13.2", TOO_CLOSE_TO_CALL),
        ("13.28", "13.2", TOO_CLOSE_TO_CALL),
        ("13.29", "13.2", ABOVE),
        ("13.10", "13.2", BELOW),
        ("13.20", "13.2", TOO_CLOSE_TO_CALL),
    ],
)
def test_a_reading_near_a_limit_proves_nothing(reading, limit, side):
    """Only a reading beyond the limit by more than the error says on which side the value lies."""
    assert side_of_limit(METER, Decimal(reading), Decimal(limit)) == side


@given(reading=st.decimals(0, 20, places=2), limit=st.decimals(0, 20, places=2))
def test_sides_are_kept_whatever_the_true_value(reading, limit):
    """Wherever the true value lies within the error, a named side is the right one."""
    side, error = side_of_limit(METER, reading, limit), error_of(METER, reading)
    for true in (reading - error, reading, reading + error):
        assert side == TOO_CLOSE_TO_CALL or (true > limit) == (side == ABOVE)


@pytest.mark.parametrize(
    ("limit", "says"),
    [
        ("0.005", "shows steps of 0.01 V"),
        ("0.02", "which hides the limit"),
        ("700", "reads -600 to 600 V"),
        ("0.1", None),
        ("0", None),
        ("600", None),
        ("-600", None),
    ],
)
def test_a_limit_finer_than_the_instrument(limit, says):
    """A limit between two steps, below the error, or out of range asks too much of the tool."""
    found = too_fine(METER, Decimal(limit))
    assert (found is None) if says is None else (says in str(found))


def test_a_band_narrower_than_the_error():
    """Between 12.4 and 12.5 V a meter that may be off by 0.08 V either way can prove nothing."""
    assert "0.0825 V either way" in str(too_narrow(METER, Decimal("12.4"), Decimal("12.5")))
    assert too_narrow(METER, Decimal("12.2"), Decimal("12.5")) is None
    exact = Instrument("V", Decimal(0), Decimal(20), None, Accuracy(fixed=Decimal("0.1")))
    assert too_narrow(exact, Decimal(12), Decimal("12.2"))
    assert too_narrow(exact, Decimal(12), Decimal("12.3")) is None
