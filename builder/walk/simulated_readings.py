"""What the instruments of a simulated vehicle show, so that a check has a given result.

In: the row of a check with its ranges, its tools, the result, random numbers. Out: readings as
somebody would type them, with noise within the error of the instrument and in one of its units; or
None where the result can't be read.
"""

from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal
from fractions import Fraction
from random import Random

from builder.trade.exact import round_to_step
from builder.trade.quantities import Quantity
from builder.trade.units import convert, same_kind
from builder.walk.answered import NOTHING_SHOWN, Answered, answered
from builder.walk.events import Answer
from builder.walk.rows import CutPair, ReadingRow, ToolRow
from builder.walk.tree_rows import WalkResultRow, WalkStepRow

_TRIES = 2000
_FARTHEST = Decimal(1000)  # where a reading has no limit above


def simulated_readings(
    row: WalkStepRow, tools: Sequence[ToolRow], result: int, random: Random
) -> Mapping[str, str] | None:
    """Return readings that give the result, clear of the limits where that can be."""
    if not row["readings"]:
        return None
    wanted = row["results"][result]
    if "none" in wanted.get("places", {}).values():
        return {row["readings"][0]["name"]: NOTHING_SHOWN}
    close: Mapping[str, str] | None = None
    for _ in range(_TRIES):
        typed = _drawn(row, tools, wanted, random)
        answer = answered(row, tools, Answer(readings=typed, result=result))
        if isinstance(answer, Answered) and not answer.too_close:
            return typed
        close = close or (typed if isinstance(answer, Answered) else None)
    return close


def _drawn(
    row: WalkStepRow, tools: Sequence[ToolRow], result: WalkResultRow, random: Random
) -> dict[str, str]:
    limits = sorted(random.randrange(2, 40) for _ in row.get("figure", ()))
    typed = {name: str(limit) for name, limit in zip(row.get("figure", ()), limits, strict=True)}
    for reading in row["readings"]:
        cuts = result["ranges"].get(reading["name"]) or _everything(reading)
        typed[reading["name"]] = _reading(reading, _filled(cuts, typed), tools, random)
    return typed


def _everything(reading: ReadingRow) -> CutPair:
    return [[reading["low"], 0], [reading["high"], 1]]


def _filled(cuts: CutPair, specs: Mapping[str, str]) -> CutPair:
    return [[specs.get(str(value), value), after] for value, after in cuts]


def _reading(reading: ReadingRow, cuts: CutPair, tools: Sequence[ToolRow], random: Random) -> str:
    low, high = (Decimal(value) for value, _ in cuts)
    low = max(low, Decimal(reading["low"]), -_FARTHEST)
    if "phrases" in reading:
        last = min(int(high) if high.is_finite() else 99, len(reading["phrases"]) - 1)
        return reading["phrases"][random.randint(min(int(low), last), last)]
    if high.is_infinite() and reading["high"] == "Infinity" and low.is_infinite():
        return "OL"
    top = Decimal(reading["high"])
    high = min(high, top if top.is_finite() else max(abs(low) * 3, _FARTHEST))
    share = _share(low <= Decimal(reading["low"]), high >= top, random)
    value = Fraction(low) + (Fraction(high) - Fraction(low)) * share
    return _as_shown(value, reading["unit"], tools, random)


def _share(open_below: bool, open_above: bool, random: Random) -> Fraction:
    """Return where in its span a reading lies: a real fault is mostly not far from the limit."""
    if open_below == open_above or random.random() < 0.2:
        return Fraction(random.randint(0, 1000), 1000)
    near = Fraction(random.randint(20, 320), 1000)
    return 1 - near if open_below else near


def _as_shown(value: Fraction, unit: str, tools: Sequence[ToolRow], random: Random) -> str:
    """Return a value as an instrument shows it: with noise, in its steps, in one of its units."""
    ranges = [one for tool in tools for one in tool["reads"] if same_kind(one[0], unit)]
    own = [one for one in ranges if one[0] == unit and Decimal(one[1]) <= value <= Decimal(one[2])]
    step = Decimal(own[0][3]) if own and Decimal(own[0][3]) else _plain_step(value)
    noise = Fraction(step) * random.randint(-2, 2) if own else Fraction(0)
    quantity = Quantity(round_to_step(value + noise, step), unit)
    others = [*_other_units(quantity, ranges)]
    chosen = random.choice(others) if others and random.random() < 0.2 else quantity
    return f"{chosen.value:f} {chosen.unit}"


def _plain_step(value: Fraction) -> Decimal:
    """Return the step of a reading that no tool of the step shows: three digits, as on a meter."""
    size = abs(value)
    return Decimal(1) if size >= 100 else Decimal("0.1") if size >= 10 else Decimal("0.01")


def _other_units(quantity: Quantity, ranges: Sequence[tuple[str, ...]]) -> Iterator[Quantity]:
    for symbol, low, high, step, *_ in ranges:
        there = round_to_step(convert(quantity.value, quantity.unit, symbol), Decimal(step))
        if symbol != quantity.unit and Decimal(low) <= there <= Decimal(high):
            yield Quantity(there, symbol)
