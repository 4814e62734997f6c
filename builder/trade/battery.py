"""The twelve-volt lead-acid battery: charge from rest voltage, load test, days until it is flat.

In: volts, degrees Celsius, ampere-hours, milliamperes. Out: exact fractions, or a `Mistake`.
The battery must have rested (hours, or the surface charge taken off), or the voltage says nothing.
Caution: hydrogen; no sparks, eye protection on. A high-voltage battery is another thing altogether:
trained people only, by the maker's service information.
"""

from fractions import Fraction

from builder.trade.exact import Exact
from builder.trade.mistake import Mistake
from builder.trade.sensors import table

# Battery Council International, open-circuit voltage against charge at 80 degF, wet cells. The
# first and last row only hold the ends level; beyond them (common practice, no source) it is no
# rest voltage of a twelve-volt battery.
CHARGE_ROWS: tuple[tuple[Fraction, Fraction], ...] = (
    (Fraction(6), Fraction(0)),
    (Fraction("11.89"), Fraction(0)),
    (Fraction("12.06"), Fraction(25)),
    (Fraction("12.24"), Fraction(50)),
    (Fraction("12.45"), Fraction(75)),
    (Fraction("12.65"), Fraction(100)),
    (Fraction("13.2"), Fraction(100)),
)
REFERENCE_CELSIUS = Fraction(80 - 32) * Fraction(5, 9)  # 80 degF
USABLE_SHARE = Fraction(1, 2)  # common practice, no source: below half charge few engines start
NO_REST_VOLTAGE = "no rest voltage of a 12 V battery: surface charge, a charger, or a dead cell"
VOLTS_PER_KELVIN = Fraction("0.024") / 10 * Fraction(9, 5)  # the same source: 0.024 V per 10 degF

# Least volts at the end of 15 s at half the cold cranking rating, by degF of the battery.
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


def rest_voltage_at_reference(volts: Exact, celsius: Exact) -> Fraction:
    """The rest voltage that the table wants: as if read at 80 degF (26.7 °C)."""
    return Fraction(volts) + VOLTS_PER_KELVIN * (Fraction(celsius) - REFERENCE_CELSIUS)


def charge(volts: Exact, celsius: Exact = REFERENCE_CELSIUS) -> Fraction | Mistake:
    """State of charge in percent from volts at rest and the battery's temperature."""
    found = table(CHARGE_ROWS, rest_voltage_at_reference(volts, celsius))
    if isinstance(found, Mistake):
        return Mistake(NO_REST_VOLTAGE)
    return found


def load_test_limit(celsius: Exact) -> Fraction | Mistake:
    """Least volts in a load test: half the cold cranking rating for 15 s, battery at `celsius`."""
    return table(LOAD_TEST_ROWS, Fraction(celsius) * Fraction(9, 5) + 32)


def drain_days(
    ampere_hours: Exact, milliamperes: Exact, usable: Exact = USABLE_SHARE
) -> Fraction | Mistake:
    """Days until a parked vehicle has used `usable` (0 to 1) of its battery."""
    if Fraction(milliamperes) <= 0:
        return Mistake("with no drain the battery lasts: a drain above 0 mA is needed")
    return Fraction(ampere_hours) * Fraction(usable) * 1000 / Fraction(milliamperes) / 24
