"""What a calculator answers: lines of text, numbers in the unit that people would use.

In: exact values. Out: `CalculatorAnswer` and its `AnswerLine`s; numbers rounded for reading, with
their exact digits beside them.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from builder.trade.exact import round_digits
from builder.trade.quantities import Quantity, format_quantity
from builder.trade.units import convert, find_unit

# Units of one kind from small to large; an answer uses the first that keeps it below
# `SCALE_SWITCH`: 20 mΩ instead of 0.02 Ω.
UNIT_SCALES: tuple[tuple[str, ...], ...] = (
    ("mV", "V", "kV"),
    ("mA", "A"),
    ("mohm", "ohm", "kohm", "Mohm"),
)
SCALE_SWITCH = 1000
OVER_THE_RANGE = "a meter that is over its range gives no number to calculate with"


@dataclass(frozen=True, slots=True)
class AnswerLine:
    """One line of an answer."""

    label: str
    text: str
    exact: str = ""  # of a number that `text` rounds: twelve digits


@dataclass(frozen=True, slots=True)
class CalculatorAnswer:
    """What shows under a form; mistakes by the name of their field, "" for the whole form."""

    lines: tuple[AnswerLine, ...] = ()
    mistakes: Mapping[str, str] = field(default_factory=dict)


def number_line(label: str, value: Fraction, symbol: str, digits: int) -> AnswerLine:
    """Write a number for the page with so many digits, and its exact digits beside it."""
    rounded = format_quantity(Quantity(round_digits(value, digits), symbol))
    unit = find_unit(symbol)
    return AnswerLine(label, rounded, f"{round_digits(value):f} {unit.label if unit else symbol}")


def scale_to_unit(value: Fraction, symbol: str) -> tuple[Fraction, str]:
    """Convert a value to the unit that people would use for it; zero stays as it is."""
    scale = next((scale for scale in UNIT_SCALES if symbol in scale), (symbol,))
    if not value or len(scale) == 1:
        return value, symbol
    pairs = [(convert(value, symbol, other), other) for other in scale]
    return next((pair for pair in pairs if abs(pair[0]) < SCALE_SWITCH), pairs[-1])
