"""Tables of a sensor: what it should read between the rows.

In: rows of (x, y) with x rising, and a value. Out: the value on the other side, or a `Mistake`;
never a guess beyond the ends. `log_table` is for what rises or falls by a factor per step, as the
resistance of a thermistor does: a straight line between distant rows is wrong by a tenth.
"""

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

from builder.trade.exact import Exact
from builder.trade.logarithms import exponential, scaled_log
from builder.trade.mistake import Mistake

TableRows = Sequence[tuple[Exact, Exact]]
_Row = tuple[Fraction, Fraction]


def rows_mistake(
    rows: TableRows, *, logarithmic: bool = False, back: bool = False
) -> Mistake | None:
    """Explain what is wrong with the rows themselves, whatever the value to look up."""
    xs, ys = [Fraction(x) for x, _ in rows], [Fraction(y) for _, y in rows]
    if len(rows) < 2:
        return Mistake("a table needs two rows or more")
    if any(second <= first for first, second in pairwise(xs)):
        return Mistake("the first figures of the rows must rise from row to row")
    if logarithmic and min(ys) <= 0:
        return Mistake("a log table needs figures above zero")
    if back and not _one_way(ys):
        return Mistake("read backwards, a table must rise all the way or fall all the way")
    return None


def _one_way(ys: Sequence[Fraction]) -> bool:
    steps = [second - first for first, second in pairwise(ys)]
    return all(step > 0 for step in steps) or all(step < 0 for step in steps)


def interpolate(rows: TableRows, value: Exact) -> Fraction | Mistake:
    """Look `value` up, on the straight line between two rows."""
    between = _around(rows, Fraction(value))
    if isinstance(between, Mistake):
        return between
    (x1, y1), (x2, y2) = between
    return y1 + (y2 - y1) * (Fraction(value) - x1) / (x2 - x1)


def interpolate_back(rows: TableRows, value: Exact) -> Fraction | Mistake:
    """Find the x at which the straight-line table reads `value`."""
    wrong = rows_mistake(rows, back=True)
    return wrong or interpolate(sorted((y, x) for x, y in rows), value)


def interpolate_log(rows: TableRows, value: Exact) -> Fraction | Mistake:
    """Look `value` up where y changes by an even factor between two rows."""
    wrong = rows_mistake(rows, logarithmic=True)
    between = wrong or _around(rows, Fraction(value))
    if isinstance(between, Mistake):
        return between
    low, high = sorted(between, key=lambda row: row[1])
    share = (Fraction(value) - low[0]) / (high[0] - low[0])
    log = scaled_log(high[1] / low[1])
    return low[1] * exponential(share.numerator * log // share.denominator)


def interpolate_log_back(rows: TableRows, value: Exact) -> Fraction | Mistake:
    """Find the x at which the log table reads `value`: the temperature of a thermistor."""
    wrong = rows_mistake(rows, logarithmic=True, back=True)
    between = wrong or _around(sorted((y, x) for x, y in rows), Fraction(value))
    if isinstance(between, Mistake):
        return between
    (y1, x1), (y2, x2) = between
    share = Fraction(scaled_log(Fraction(value) / y1), scaled_log(y2 / y1))
    return x1 + (x2 - x1) * share


def _around(rows: TableRows, value: Fraction) -> tuple[_Row, _Row] | Mistake:
    """Find the two rows on either side of a value."""
    wrong = rows_mistake(rows)
    if wrong:
        return wrong
    exact = [(Fraction(x), Fraction(y)) for x, y in rows]
    for first, second in pairwise(exact):
        if first[0] <= value <= second[0]:
            return first, second
    ends = f"{float(exact[0][0]):g} to {float(exact[-1][0]):g}"
    return Mistake(f"{float(value):g} is outside the table, which goes from {ends}")
