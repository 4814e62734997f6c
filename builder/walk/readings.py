"""Typed readings of a check, as values with the error of the instrument.

In: a row of the walk table, its tools, the typed text. Out: a `ReadingValue` for each reading, or a
message. A reading in another unit of the same kind is converted exactly.
"""

from collections.abc import Mapping, Sequence
from decimal import Decimal
from fractions import Fraction
from typing import NamedTuple

from builder.model.ranges import INFINITY
from builder.trade.exact import round_digits
from builder.trade.mistake import Mistake
from builder.trade.quantities import OverRange, Quantity, typed_quantity
from builder.trade.units import convert, find_unit, same_kind
from builder.walk.rows import InstrumentRow, ReadingRow, StepRow, ToolRow

_OVER_LIMIT = "OL isn't a valid reading here: check the leads and the range, then reread"


class ReadingValue(NamedTuple):
    """A reading, and the tool's possible error in the unit of the reading."""

    value: Decimal
    tool: str = ""
    error: Decimal = Decimal(0)


def parse_readings(
    row: StepRow, tools: Sequence[ToolRow], filled: Mapping[str, str]
) -> tuple[dict[str, ReadingValue], dict[str, str]]:
    """Return the value of every field that is filled in, or its message; specs come first."""
    parsed: dict[str, ReadingValue | Mistake] = {}
    for name in row.get("figure", ()):
        if name in filled:
            parsed[name] = _parse_spec(filled[name], row["readings"][0]["unit"])
    for reading in row["readings"]:
        name = reading["name"]
        if name in filled:
            parsed[name] = _parse_reading(filled[name], reading, tools)
    values = {name: value for name, value in parsed.items() if isinstance(value, ReadingValue)}
    messages = {name: value.message for name, value in parsed.items() if isinstance(value, Mistake)}
    low, high = values.get("from"), values.get("to")
    if "figure" in row and low and high and low.value > high.value:
        messages["to"] = "the high spec is below the low spec"
    return values, messages


def _parse_spec(text: str, unit: str) -> ReadingValue | Mistake:
    quantity = typed_quantity(text, unit)
    if isinstance(quantity, Mistake):
        return quantity
    if isinstance(quantity, OverRange):
        return Mistake("the spec must be a number")
    return ReadingValue(round_digits(convert(quantity.value, quantity.unit, unit)))


def _parse_reading(text: str, row: ReadingRow, tools: Sequence[ToolRow]) -> ReadingValue | Mistake:
    if "phrases" in row:
        phrases = row["phrases"]
        if text not in phrases:
            return Mistake(f"{text} isn't one of: {', '.join(phrases)}")
        return ReadingValue(Decimal(phrases.index(text)))
    unit = row["unit"]
    quantity = typed_quantity(text, unit)
    if isinstance(quantity, Mistake):
        return quantity
    if isinstance(quantity, OverRange):
        return ReadingValue(INFINITY) if row["high"] == "Infinity" else Mistake(_OVER_LIMIT)
    value = round_digits(convert(quantity.value, quantity.unit, unit))
    if not Decimal(row["low"]) <= value <= Decimal(row["high"]):
        high = "OL" if row["high"] == "Infinity" else row["high"]
        return Mistake(
            f"{value:f} {unit} is outside {row['low']} to {high} {unit}: check the unit and the "
            "leads; if it stays, no result matches"
        )
    return ReadingValue(value, *_tool_error(quantity, unit, tools))


def _tool_error(quantity: Quantity, unit: str, tools: Sequence[ToolRow]) -> tuple[str, Decimal]:
    """Return the tool that reads this and its possible error; the typed unit comes first."""
    ranges = [(tool["name"], row) for tool in tools for row in tool["reads"]]
    ranges = [pair for pair in ranges if same_kind(pair[1][0], unit)]
    for name, row in sorted(ranges, key=lambda pair: pair[1][0] != quantity.unit):
        tool_unit, low, high = row[:3]
        value = round_digits(convert(quantity.value, quantity.unit, tool_unit))
        if Decimal(low) <= value <= Decimal(high):
            return name, round_digits(_error_of(row, Fraction(value)) * _factor(tool_unit, unit))
    return "", Decimal(0)


def _error_of(row: InstrumentRow, value: Fraction) -> Fraction:
    resolution, percent, digits, fixed = map(Fraction, row[3:])
    return abs(value) * percent / 100 + digits * resolution + fixed


def _factor(source: str, target: str) -> Fraction:
    """Return the factor of a difference from one unit to the other."""
    from_unit, to_unit = find_unit(source), find_unit(target)
    return from_unit.factor / to_unit.factor if from_unit and to_unit else Fraction(1)
