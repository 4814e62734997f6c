"""Whole-number logarithms against the decimals of the standard library."""

from decimal import Decimal, localcontext
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from builder.trade.logarithms import SCALE, exponential, scaled_log

VALUES = st.fractions(min_value=Fraction(1, 10**6), max_value=10**9, max_denominator=10**6)


@given(VALUES)
def test_logarithm(value):
    """Python's correctly rounded logarithm agrees to 27 places."""
    with localcontext() as context:
        context.prec = 40
        theirs = (Decimal(value.numerator) / Decimal(value.denominator)).ln()
        assert abs(Decimal(scaled_log(value)) / SCALE - theirs) < Decimal("1e-27")


@given(st.integers(0, 25 * 10**30))
def test_exponential(scaled):
    """Python's correctly rounded exponential agrees to 26 digits."""
    with localcontext() as context:
        context.prec = 50
        theirs = (Decimal(scaled) / SCALE).exp()
        ours = exponential(scaled)
        ours_decimal = Decimal(ours.numerator) / Decimal(ours.denominator)
        assert abs(ours_decimal / theirs - 1) < Decimal("1e-26")


def test_the_digits_themselves():
    """The very digits that a page must reproduce: the logarithms of 2 and 10, and e."""
    assert scaled_log(Fraction(2)) == 693147180559945309417232121428
    assert scaled_log(Fraction(10)) == 2302585092994045684017991454582
    assert scaled_log(Fraction(5, 2)) == 916290731874155065183527211726
    assert scaled_log(Fraction(3, 10)) == -1203972804325935992622746217712
    assert scaled_log(Fraction(15, 7)) == 762140052046896760890651826666
    assert scaled_log(Fraction(1)) == 0
    assert exponential(0) == 1
    assert exponential(SCALE) * SCALE == 2718281828459045235360287471414
