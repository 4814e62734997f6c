"""The 12 V lead-acid battery: state of charge, load test limit, days until it is dead.

In: volts, degrees Celsius, ampere-hours, milliamperes. Out: exact fractions, or a `Mistake`.
Open-circuit voltage counts only after the battery has sat for hours or its surface charge has been
removed. The table holds near 80 °F (26.7 °C) and is not corrected for temperature: sources disagree
about the sign and the size of that correction (tests/trade/test_battery.py names them).
Caution: hydrogen; no sparks, eye protection on. A high-voltage battery is another thing altogether:
trained techs only, following the vehicle maker's service information.
"""

from fractions import Fraction

from builder.trade.exact import Exact
from builder.trade.mistake import Mistake
from builder.trade.sensors import interpolate

# Battery Council International, open-circuit voltage against charge at 80 °F, wet cells. The first
# and last row only hold the ends level; beyond them (common practice, no source) the reading is no
# open-circuit voltage of a 12 V battery.
CHARGE_ROWS: tuple[tuple[Fraction, Fraction], ...] = (
    (Fraction(6), Fraction(0)),
    (Fraction("11.89"), Fraction(0)),
    (Fraction("12.06"), Fraction(25)),
    (Fraction("12.24"), Fraction(50)),
    (Fraction("12.45"), Fraction(75)),
    (Fraction("12.65"), Fraction(100)),
    (Fraction("13.2"), Fraction(100)),
)
USABLE_SHARE = Fraction(1, 2)  # common practice, no source: below half charge few engines start
NOT_OPEN_CIRCUIT = (
    "not the open-circuit voltage of a 12 V battery: surface charge, a charger, or a dead cell"
)

# Lowest volts after 15 s at half the cold cranking rating, by degrees Fahrenheit of the battery.
# SAE J537 / Battery Council International, from memory. First and last row hold the ends level.
LOAD_TEST_ROWS: tuple[tuple[Fraction, Fraction], ...] = (
    (Fraction(-40), Fraction("8.5")),
    (Fraction(0), Fraction("8.5")),
    (Fraction(10), Fraction("8.7")),
    (Fraction(20), Fraction("8.9")),
    (Fraction(30), Fraction("9.1")),
    (Fraction(40), Fraction("9.3")),
    (Fraction(50), Fraction("9.4")),
    (Fraction(60), Fraction("9.5")),
    (Fraction(70), Fraction("9.6")),
    (Fraction(150), Fraction("9.6")),
)


def state_of_charge(volts: Exact) -> Fraction | Mistake:
    """Return the state of charge in percent from open-circuit volts, battery near 80 °F."""
    percent = interpolate(CHARGE_ROWS, volts)
    return Mistake(NOT_OPEN_CIRCUIT) if isinstance(percent, Mistake) else percent


def load_test_limit(celsius: Exact) -> Fraction | Mistake:
    """Return the lowest volts in a load test: half the cold cranking rating for 15 s."""
    return interpolate(LOAD_TEST_ROWS, Fraction(celsius) * Fraction(9, 5) + 32)


def drain_days(
    ampere_hours: Exact, milliamperes: Exact, usable: Exact = USABLE_SHARE
) -> Fraction | Mistake:
    """Return the days until a parked vehicle has used `usable` (0 to 1) of its battery."""
    if Fraction(milliamperes) <= 0:
        return Mistake("enter a draw above 0 mA: without one the battery isn't drained")
    return Fraction(ampere_hours) * Fraction(usable) * 1000 / Fraction(milliamperes) / 24
