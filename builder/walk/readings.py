"""What was typed beside the readings of a check, as values with what the instrument may be off.

In: a row of the walk table, its tools, what was typed. Out: a `Read` for each reading, or a mistake
in words. Typed in another unit of its kind, a reading is converted exactly.
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
from builder.walk.rows import ReadingRow, Reads, StepRow, ToolRow

_OVER = "OL is no reading of this check: look at the leads and the range, then read again"


class Read(NamedTuple):
    """A reading that was taken, and how far the tool that took it may be off, in its unit."""

    value: Decimal
    tool: str = ""
    error: Decimal = Decimal(0)


def all_read(
    row: StepRow, tools: Sequence[ToolRow], filled: Mapping[str, str]
) -> tuple[dict[str, Read], dict[str, str]]:
    """Read every field that was filled in; the figures that were looked up come first."""
    read: dict[str, Read] = {}
    mistakes: dict[str, str] = {}
    for name in row.get("figure", ()):
        if name in filled:
            _keep(name, _figure(row["readings"][0]["unit"], filled[name]), read, mistakes)
    for one in row["readings"]:
        if one["name"] in filled:
            _keep(one["name"], _reading(one, tools, filled[one["name"]]), read, mistakes)
    if "figure" in row and {"from", "to"} <= read.keys() and read["from"].value > read["to"].value:
        mistakes["to"] = "the band ends below its beginning"
    return read, mistakes


def _keep(
    name: str, found: Read | Mistake, read: dict[str, Read], mistakes: dict[str, str]
) -> None:
    if isinstance(found, Mistake):
        mistakes[name] = found.message
    else:
        read[name] = found


def _figure(wanted: str, text: str) -> Read | Mistake:
    found = typed_quantity(text, wanted)
    if isinstance(found, Mistake):
        return found
    if isinstance(found, OverRange):
        return Mistake("the maker's figure is a number")
    return Read(round_digits(convert(found.value, found.unit, wanted)))


def _reading(row: ReadingRow, tools: Sequence[ToolRow], text: str) -> Read | Mistake:
    if "phrases" in row:
        phrases = row["phrases"]
        if text not in phrases:
            return Mistake(f"{text} is none of: {', '.join(phrases)}")
        return Read(Decimal(phrases.index(text)))
    found = typed_quantity(text, row["unit"])
    if isinstance(found, Mistake):
        return found
    if isinstance(found, OverRange):
        return Read(INFINITY) if row["high"] == "Infinity" else Mistake(_OVER)
    value = round_digits(convert(found.value, found.unit, row["unit"]))
    if not Decimal(row["low"]) <= value <= Decimal(row["high"]):
        high = "OL" if row["high"] == "Infinity" else row["high"]
        return Mistake(
            f"{value:f} {row['unit']} is outside {row['low']} to {high} {row['unit']}: look at "
            "the unit and the leads; if it stays, none of these results fits"
        )
    return Read(value, *_error(row["unit"], tools, found))


def _error(wanted: str, tools: Sequence[ToolRow], found: Quantity) -> tuple[str, Decimal]:
    """Return the tool that reads this, and how far it may be off; the unit typed comes first."""
    reads = [(tool["name"], one) for tool in tools for one in tool["reads"]]
    reads = [pair for pair in reads if same_kind(pair[1][0], wanted)]
    for name, one in sorted(reads, key=lambda pair: pair[1][0] != found.unit):
        value = round_digits(convert(found.value, found.unit, one[0]))
        if Decimal(one[1]) <= value <= Decimal(one[2]):
            return name, round_digits(_off(one, Fraction(value)) * _factor(one[0], wanted))
    return "", Decimal(0)


def _off(reads: Reads, value: Fraction) -> Fraction:
    step, percent, digits, fixed = map(Fraction, reads[3:])
    return abs(value) * percent / 100 + digits * step + fixed


def _factor(given: str, wanted: str) -> Fraction:
    """How many times a difference grows from one unit to the other."""
    source, target = find_unit(given), find_unit(wanted)
    return source.factor / target.factor if source and target else Fraction(1)
