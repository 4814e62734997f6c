"""Natural logarithm and exponential in whole numbers.

In: fractions. Out: whole numbers scaled by `SCALE`. A library's logarithm may differ in its last
digit from the one in a browser; additions and divisions of whole numbers cannot, so a page that
follows these few lines shows the very digits that the check calculated.
"""

from fractions import Fraction

SCALE = 10**30


def scaled_log(value: Fraction) -> int:
    """Natural logarithm of a value above zero, times SCALE; all divisions drop the remainder."""
    doublings = 0
    while value >= 2:
        value, doublings = value / 2, doublings + 1
    while value < 1:
        value, doublings = value * 2, doublings - 1
    return _log_below_two(value) + doublings * _LOG_OF_TWO


def _log_below_two(value: Fraction) -> int:
    """ln x = 2 (z + z^3/3 + z^5/5 + ...) with z = (x - 1) / (x + 1), for 1 <= x <= 2."""
    ratio = (value - 1) / (value + 1)
    power = ratio.numerator * SCALE // ratio.denominator
    square = power * power // SCALE
    total, odd = 0, 1
    while power:
        total += power // odd
        power, odd = power * square // SCALE, odd + 2
    return 2 * total


_LOG_OF_TWO = _log_below_two(Fraction(2))


def exponential(scaled: int) -> Fraction:
    """Raise e to `scaled` / SCALE, for zero and above: doublings out, the rest as its series."""
    doublings, rest = divmod(scaled, _LOG_OF_TWO)
    total, term, count = 0, SCALE, 1
    while term:
        total += term
        term, count = term * rest // SCALE // count, count + 1
    return Fraction(total << doublings, SCALE)
