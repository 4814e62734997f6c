"""Between which values a computed reading can lie, from the ranges of the readings it uses.

In: a compiled expression and the range of each reading. Out: the lowest and the highest value, or a
`Mistake` where it can't be calculated somewhere in those ranges. A reading that occurs twice is
taken as two (interval arithmetic), so the answer may be wider than the truth and never narrower.
"""

from collections.abc import Mapping, Sequence
from decimal import Decimal
from fractions import Fraction
from itertools import product

from builder.trade.exact import DOWN, UP, round_digits
from builder.trade.functions import OPERATIONS, Compiled, row_pairs
from builder.trade.mistake import Mistake

_Range = tuple[Fraction, Fraction]
_RISING = {"+", "parallel", "largest", "smallest", "average"}  # with each of their operands
_TABLES = {"table", "table_back", "log_table", "log_table_back"}


def bounds_of_form(
    form: Compiled, ranges: Mapping[str, tuple[Decimal, Decimal]]
) -> tuple[Decimal, Decimal] | Mistake:
    """Lowest and highest value of a compiled expression, rounded outward."""
    bounds = _bounds(form, ranges)
    if isinstance(bounds, Mistake):
        return bounds
    return round_digits(bounds[0], towards=DOWN), round_digits(bounds[1], towards=UP)


def _bounds(form: Compiled, ranges: Mapping[str, tuple[Decimal, Decimal]]) -> _Range | Mistake:
    kind, *parts = form
    if kind == "number":
        return Fraction(str(parts[0])), Fraction(str(parts[0]))
    if kind == "reading":
        return _range(str(parts[0]), ranges)
    operands: list[_Range] = []
    for part in parts:
        one = _bounds(part, ranges) if isinstance(part, list) else Mistake("no such part")
        if isinstance(one, Mistake):
            return one
        operands.append(one)
    return _combined(str(kind), operands)


def _range(name: str, ranges: Mapping[str, tuple[Decimal, Decimal]]) -> _Range | Mistake:
    if name not in ranges:
        return Mistake(f"the range of {name} is unknown")
    low, high = ranges[name]
    if not (low.is_finite() and high.is_finite()) or low > high:
        return Mistake(f"{low} to {high} is no range for {name}")
    return Fraction(low), Fraction(high)


def _combined(kind: str, operands: Sequence[_Range]) -> _Range | Mistake:
    """Every operation rises or falls with each operand, so its extremes are at the ranges' ends."""
    if kind in _TABLES:
        return _of_table(kind, operands)
    if kind == "/" and operands[1][0] <= 0 <= operands[1][1]:
        return Mistake("this can divide by zero: give the divisor a range without zero")
    if kind in _RISING:
        return _extremes(kind, list(zip(*operands, strict=True)))
    extremes = _extremes(kind, list(product(*operands)))
    if isinstance(extremes, Mistake) or kind != "difference":
        return extremes
    (low, high), (other_low, other_high) = operands
    overlap = low <= other_high and other_low <= high
    return Fraction(0) if overlap else extremes[0], extremes[1]


def _of_table(kind: str, operands: Sequence[_Range]) -> _Range | Mistake:
    """A table bends only at its rows; beyond its ends there is no value."""
    flat = [low for low, _ in operands[1:]]
    knots = sorted(row[1 if kind.endswith("back") else 0] for row in row_pairs(flat))
    low, high = max(operands[0][0], knots[0]), min(operands[0][1], knots[-1])
    if low > high:
        return Mistake("the whole range is outside the table")
    inside = [knot for knot in knots if low < knot < high]
    return _extremes(kind, [(one, *flat) for one in (low, *inside, high)])


def _extremes(kind: str, corners: Sequence[Sequence[Fraction]]) -> _Range | Mistake:
    values: list[Fraction] = []
    for corner in corners:
        one = OPERATIONS[kind](*corner)
        if isinstance(one, Mistake):
            return one
        values.append(one)
    return min(values), max(values)
