"""The digit rule against NIST SP 811 (2008) B.7.1 (from memory) and Python's own decimals."""

from decimal import Decimal, localcontext
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.trade.exact import COMPUTED_DIGITS, DOWN, NEAREST, UP, round_digits, round_to_step


@pytest.mark.parametrize(
    ("value", "digits", "printed"),
    [
        ("6.9749515", 7, "6.974952"),  # B.7.1: a 5 with nothing behind it, odd digit before: up
        ("6.9749505", 7, "6.97495"),  # B.7.1: a 5 with nothing behind it, even digit before: stays
        ("6.974951501", 7, "6.974952"),  # B.7.1: more than a half: up
        ("6.974951499", 7, "6.974951"),
        ("1200", 12, "1200"),
        ("0.20", 12, "0.2"),
    ],
)
def test_rounding_is_half_to_even(value, digits, printed):
    """The last digit stays when exactly a half is dropped and it is even."""
    assert str(round_digits(Fraction(value), digits)) == printed


def test_twelve_digits_unless_said():
    """A computed reading keeps twelve significant digits, rounded outward on request."""
    assert COMPUTED_DIGITS == 12
    assert str(round_digits(Fraction(2, 3))) == "0.666666666667"
    assert str(round_digits(Fraction(2, 3), towards=DOWN)) == "0.666666666666"
    assert str(round_digits(Fraction(-1, 3), towards=DOWN)) == "-0.333333333334"
    assert str(round_digits(Fraction(1, 3), towards=UP)) == "0.333333333334"
    assert str(round_digits(Fraction(1, 3), towards=NEAREST)) == "0.333333333333"


@given(st.fractions(max_denominator=10**9))
def test_python_rounds_the_same(value):
    """The standard library's decimal division gives the same value."""
    with localcontext() as context:
        context.prec = COMPUTED_DIGITS
        assert round_digits(value) == Decimal(value.numerator) / Decimal(value.denominator)


def test_steps_of_an_instrument():
    """A value falls on the nearest step, with the digits of the step."""
    assert str(round_to_step(Fraction(221, 10), Decimal("0.5"))) == "22.0"
    assert str(round_to_step(Fraction("12.345"), Decimal("0.01"))) == "12.34"
