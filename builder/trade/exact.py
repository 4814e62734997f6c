"""Exact numbers, and the one rule by which they become digits.

In: decimals, fractions, whole numbers. Out: the same value as a fraction, and back as a decimal.
Every calculation is carried as a fraction and rounded once, at the end, half to even as NIST
SP 811 (2008) B.7.1 has it; so a script that calculates in whole numbers gets the same digits.
"""

from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_EVEN, Context, Decimal
from fractions import Fraction

Exact = Decimal | Fraction | int

COMPUTED_DIGITS = 12  # significant digits of a computed reading: far beyond any instrument in a bay

NEAREST, DOWN, UP = ROUND_HALF_EVEN, ROUND_FLOOR, ROUND_CEILING


def round_digits(value: Exact, digits: int = COMPUTED_DIGITS, towards: str = NEAREST) -> Decimal:
    """Round to significant digits, no trailing zeros; `towards` is NEAREST, DOWN or UP."""
    exact = Fraction(value)
    context = Context(prec=digits, rounding=towards)
    quotient = context.divide(Decimal(exact.numerator), Decimal(exact.denominator))
    return Decimal(f"{quotient.normalize():f}")


def round_to_step(value: Exact, step: Decimal) -> Decimal:
    """Round to a whole number of steps, half to even, with the digits of the step."""
    steps = round(Fraction(value) / Fraction(step))
    return Decimal(steps) * step
