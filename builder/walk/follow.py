"""Which result a check gives, from the typed readings.

In: a row of the walk table, the tools, and the typed text by the name of the reading. Out: a
`ReadingOutcome`. `web/follow.js` does the same; one table of cases holds both to it.

A reading proves a result only if it clears the limits by more than the instrument's possible error
(`trade/instruments`). Of computed readings the extremes count, so a reading may be called too close
when it isn't, but never the other way around.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from typing import NamedTuple

from builder.model.ranges import INFINITY, Cut, Range
from builder.trade.bounds import bounds_of_form
from builder.trade.exact import DOWN, UP, round_digits
from builder.trade.expressions import Compiled, run_form
from builder.trade.mistake import Mistake
from builder.walk.readings import ReadingValue, parse_readings
from builder.walk.rows import CutPair, ReadingRow, ResultRow, StepRow, ToolRow, WalkTable


class OutcomeState(StrEnum):
    """How far the readings of a check lead."""

    EMPTY = "empty"  # nothing typed
    INVALID = "invalid"  # an entry that makes no sense
    INCOMPLETE = "incomplete"  # more readings needed
    DECIDED = "decided"
    TOO_CLOSE = "too close to call"
    NO_RESULT = "no result"


@dataclass(frozen=True, slots=True)
class ReadingOutcome:
    """What the readings so far show; results are counted from 0."""

    state: OutcomeState
    fits: tuple[int, ...] = ()  # possible results, in the order of the check
    reads_as: int | None = None  # the result of the readings without any error
    values: Mapping[str, str] = field(default_factory=dict)  # "" if it can't be calculated
    errors: Mapping[str, tuple[str, str]] = field(default_factory=dict)  # tool, possible error
    mistakes: Mapping[str, str] = field(default_factory=dict)


class _Span(NamedTuple):
    """The true value is between these two; they are equal if it is known exactly."""

    low: Decimal
    high: Decimal


_ANYTHING = _Span(-INFINITY, INFINITY)


def follow(table: WalkTable, step: str, typed: Mapping[str, str]) -> ReadingOutcome:
    """Return which result of a step matches the readings; an empty field isn't read yet."""
    row = table["steps"][step]
    return read_as(
        row, [table["tools"][id_] for id_ in row["tools"] if id_ in table["tools"]], typed
    )


def read_as(row: StepRow, tools: Sequence[ToolRow], typed: Mapping[str, str]) -> ReadingOutcome:
    """Return which result of a check matches the readings, taken with these tools."""
    filled = {name: text.strip() for name, text in typed.items() if text.strip()}
    if not filled:
        return ReadingOutcome(OutcomeState.EMPTY)
    readings, mistakes = parse_readings(row, tools, filled)
    if mistakes:
        return ReadingOutcome(OutcomeState.INVALID, mistakes=mistakes)
    if not set(row.get("figure", ())) <= readings.keys():
        return ReadingOutcome(OutcomeState.INCOMPLETE, tuple(range(len(row["results"]))))
    return _outcome(row, readings)


def _outcome(row: StepRow, readings: Mapping[str, ReadingValue]) -> ReadingOutcome:
    names = {reading["name"] for reading in row["readings"]}
    spans = {reading["name"]: _span(reading, readings) for reading in row["readings"]}
    values: dict[str, Decimal | None] = {
        name: reading.value for name, reading in readings.items() if name in names
    }
    spans |= _computed_spans(row, spans, values)
    fits = _possible_results(row["results"], spans, readings)
    is_complete = names <= readings.keys()
    exact = _exact_result(row["results"], values, readings) if is_complete else None
    targets = {row["results"][at]["to"] for at in fits}
    if not fits or (is_complete and exact is None):
        state = OutcomeState.NO_RESULT
    elif len(targets) == 1:
        state, fits = OutcomeState.DECIDED, fits if exact is None else (exact,)
    else:
        state = OutcomeState.TOO_CLOSE if is_complete else OutcomeState.INCOMPLETE
    return ReadingOutcome(
        state,
        fits,
        exact,
        {name: "" if value is None else f"{value:f}" for name, value in values.items()},
        {name: (value.tool, f"{value.error:f}") for name, value in readings.items() if value.error},
    )


def _span(row: ReadingRow, readings: Mapping[str, ReadingValue]) -> _Span:
    reading = readings.get(row["name"])
    if reading is None:
        return _Span(Decimal(row["low"]), Decimal(row["high"]))
    if not reading.error:
        return _Span(reading.value, reading.value)
    value, error = Fraction(reading.value), Fraction(reading.error)
    return _Span(round_digits(value - error, towards=DOWN), round_digits(value + error, towards=UP))


def _computed_spans(
    row: StepRow, spans: Mapping[str, _Span], values: dict[str, Decimal | None]
) -> dict[str, _Span]:
    """Return the spans of the computed readings; their values, if known, are added."""
    known = dict(spans)
    for computed in row["computed"]:
        name, form = computed["name"], computed["form"]
        used = _names(form)
        known[name] = _computed_span(form, {use: known[use] for use in used})
        if all(use in values for use in used):
            values[name] = _value(form, values)
            if values[name] is None:
                known[name] = _Span(INFINITY, -INFINITY)  # empty: no result that names it matches
            elif all(known[use].low == known[use].high for use in used):
                known[name] = _Span(*[values[name] or Decimal(0)] * 2)
    return {computed["name"]: known[computed["name"]] for computed in row["computed"]}


def _names(form: Compiled) -> set[str]:
    if form[0] == "reading":
        return {str(form[1])}
    return {name for part in form if isinstance(part, list) for name in _names(part)}


def _computed_span(form: Compiled, spans: Mapping[str, _Span]) -> _Span:
    if not all(end.is_finite() for span in spans.values() for end in span):
        return _ANYTHING
    bounds = bounds_of_form(form, spans)
    return _ANYTHING if isinstance(bounds, Mistake) else _Span(*bounds)


def _value(form: Compiled, values: Mapping[str, Decimal | None]) -> Decimal | None:
    known = {name: value for name, value in values.items() if value is not None}
    value = run_form(form, known)
    return None if isinstance(value, Mistake) else round_digits(value)


def _possible_results(
    results: Sequence[ResultRow],
    spans: Mapping[str, _Span],
    readings: Mapping[str, ReadingValue],
) -> tuple[int, ...]:
    """Return every result that can be true, up to the first that is certain."""
    possible: list[int] = []
    for at, result in enumerate(results):
        pairs = [(_range(cuts, readings), spans[name]) for name, cuts in result["ranges"].items()]
        if result.get("otherwise") or all(_overlaps(*pair) for pair in pairs):
            possible.append(at)
            if result.get("otherwise") or all(_contains(*pair) for pair in pairs):
                break
    return tuple(possible)


def _range(cuts: CutPair, readings: Mapping[str, ReadingValue]) -> Range:
    """Return the range of two cuts, with the specs that were looked up filled in."""
    low, high = (
        Cut(readings[str(value)].value if value in readings else Decimal(value), bool(after))
        for value, after in cuts
    )
    return Range(low, high)


def _overlaps(result: Range, span: _Span) -> bool:
    if span.low == span.high:
        return result.contains(span.low)
    return result.low.value <= span.high and span.low <= result.high.value


def _contains(result: Range, span: _Span) -> bool:
    if span.low == span.high:
        return result.contains(span.low)
    return result.low.value < span.low and span.high < result.high.value


def _exact_result(
    results: Sequence[ResultRow],
    values: Mapping[str, Decimal | None],
    readings: Mapping[str, ReadingValue],
) -> int | None:
    """Return the first result that covers the readings, taken as exact."""
    for at, result in enumerate(results):
        pairs = [(_range(cuts, readings), values[name]) for name, cuts in result["ranges"].items()]
        if result.get("otherwise") or all(
            value is not None and range_.contains(value) for range_, value in pairs
        ):
            return at
    return None
