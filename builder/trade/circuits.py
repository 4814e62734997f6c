"""Sums of a circuit: resistors side by side and in a row, drops, currents, dividers.

In: exact numbers in ohm, volt and ampere. Out: exact fractions, or a `Mistake`. The formulae are
Ohm's and Kirchhoff's laws as any textbook has them. Never put an ohmmeter on a live circuit, a
restraint part or a high-voltage part; the maker's service information comes first.
"""

from fractions import Fraction

from builder.trade.exact import Exact
from builder.trade.mistake import Mistake


def parallel(*ohms: Exact) -> Fraction | Mistake:
    """Resistance of resistors side by side, 1/R = 1/R1 + 1/R2 + ...; one short makes it zero."""
    values = [Fraction(one) for one in ohms]
    if not values or min(values) < 0:
        return Mistake("resistors side by side: at least one, and none below zero")
    if min(values) == 0:
        return Fraction(0)
    return 1 / sum((1 / one for one in values), Fraction(0))


def series(*ohms: Exact) -> Fraction | Mistake:
    """Resistance of resistors in a row: their sum."""
    values = [Fraction(one) for one in ohms]
    if not values or min(values) < 0:
        return Mistake("resistors in a row: at least one, and none below zero")
    return sum(values, Fraction(0))


def voltage_drop(amperes: Exact, ohms: Exact) -> Fraction:
    """Volts lost across a resistance while a current flows; no current, no drop to be seen."""
    return Fraction(amperes) * Fraction(ohms)


def current(volts: Exact, ohms: Exact) -> Fraction | Mistake:
    """Amperes through a resistance with a voltage across it, as across a fuse to find a drain."""
    if Fraction(ohms) <= 0:
        return Mistake("the current through no resistance cannot be worked out")
    return Fraction(volts) / Fraction(ohms)


def divider(supply: Exact, top: Exact, bottom: Exact) -> Fraction | Mistake:
    """Volts in the middle of two resistors; `bottom` is the one to ground, as a sensor is."""
    upper, lower = Fraction(top), Fraction(bottom)
    if upper < 0 or lower < 0 or upper + lower == 0:
        return Mistake("a divider needs two resistances that are not both zero, none below zero")
    return Fraction(supply) * lower / (upper + lower)
