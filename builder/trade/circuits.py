"""Calculations of a circuit: resistors in parallel and in series, drops, currents, dividers.

In: exact numbers in ohm, volt and ampere. Out: exact fractions, or a `Mistake`. The formulae are
Ohm's and Kirchhoff's laws, from any textbook. Never put an ohmmeter on a live circuit, a
restraint part, or a high-voltage part; follow the vehicle maker's service information first.
"""

from fractions import Fraction

from builder.trade.exact import Exact
from builder.trade.mistake import Mistake


def parallel(*ohms: Exact) -> Fraction | Mistake:
    """Return the resistance of resistors in parallel, 1/R = 1/R1 + 1/R2 + ...; 0 with a short."""
    values = [Fraction(one) for one in ohms]
    if not values or min(values) < 0:
        return Mistake("resistors in parallel: at least one, and none below zero")
    if min(values) == 0:
        return Fraction(0)
    return 1 / sum((1 / one for one in values), Fraction(0))


def series(*ohms: Exact) -> Fraction | Mistake:
    """Return the resistance of resistors in series: their sum."""
    values = [Fraction(one) for one in ohms]
    if not values or min(values) < 0:
        return Mistake("resistors in series: at least one, and none below zero")
    return sum(values, Fraction(0))


def voltage_drop(amperes: Exact, ohms: Exact) -> Fraction:
    """Return the volts dropped across a resistance; with no current there is no drop."""
    return Fraction(amperes) * Fraction(ohms)


def current(volts: Exact, ohms: Exact) -> Fraction | Mistake:
    """Return the amperes through a resistance with a voltage across it, as across a fuse."""
    if Fraction(ohms) <= 0:
        return Mistake("the current through a resistance of zero can't be calculated")
    return Fraction(volts) / Fraction(ohms)


def divider(supply: Exact, top: Exact, bottom: Exact) -> Fraction | Mistake:
    """Return the volts between two resistors; `bottom` is the one to ground, like a sensor."""
    upper, lower = Fraction(top), Fraction(bottom)
    if upper < 0 or lower < 0 or upper + lower == 0:
        return Mistake("a divider needs two resistances that are not both zero, none below zero")
    return Fraction(supply) * lower / (upper + lower)
