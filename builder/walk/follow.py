"""Which result a check gives, from what was typed beside its readings.

In: a row of the walk table, the tools, and what was typed, by the name of the reading. Out: an
`Outcome`. `web/walk.js` does the same, held equal by one table of cases.

A reading proves a result only where it clears the limits by more than the instrument may be off
(`trade/instruments`); of computed readings the extremes are taken, so "too close to say" is said
once too often rather than once too seldom.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from fractions import Fraction
from typing import NamedTuple

from builder.model.ranges import INFINITY, Cut, Range
from builder.trade.bounds import bounds_of_form
from builder.trade.exact import DOWN, UP, round_digits
from builder.trade.expressions import Compiled, run_form
from builder.trade.mistake import Mistake
from builder.walk.readings import Read, all_read
from builder.walk.rows import ReadingRow, ResultRow, Side, StepRow, Table

NOTHING, WAITING, WRONG = "nothing typed", "more to be typed", "typed wrongly"
DECIDED, TOO_CLOSE, NO_RESULT = "decided", "too close to say", "no result"


@dataclass(frozen=True, slots=True)
class Outcome:
    """What was found out so far; results are counted from 0."""

    state: str
    fits: tuple[int, ...] = ()  # results that can be true, in the order of the check
    reads_as: int | None = None  # the result that takes the figures just as they were read
    values: Mapping[str, str] = field(default_factory=dict)  # "" where it cannot be worked out
    errors: Mapping[str, tuple[str, str]] = field(default_factory=dict)  # tool, and how far off
    mistakes: Mapping[str, str] = field(default_factory=dict)


class _Span(NamedTuple):
    """Between which values the truth lies; both the same where that is known exactly."""

    low: Decimal
    high: Decimal


_ANYTHING = _Span(-INFINITY, INFINITY)


def follow(table: Table, step: str, typed: Mapping[str, str]) -> Outcome:
    """Say which result of a step fits what was typed; an empty field has not been read yet."""
    row = table["steps"][step]
    filled = {name: text.strip() for name, text in typed.items() if text.strip()}
    if not filled:
        return Outcome(NOTHING)
    tools = [table["tools"][id_] for id_ in row["tools"] if id_ in table["tools"]]
    read, mistakes = all_read(row, tools, filled)
    if mistakes:
        return Outcome(WRONG, mistakes=mistakes)
    if not set(row.get("figure", ())) <= read.keys():
        return Outcome(WAITING, tuple(range(len(row["results"]))))
    return _outcome(row, read)


def _outcome(row: StepRow, read: Mapping[str, Read]) -> Outcome:
    names = {one["name"] for one in row["readings"]}
    spans = {one["name"]: _span(one, read.get(one["name"])) for one in row["readings"]}
    values: dict[str, Decimal | None] = {
        name: one.value for name, one in read.items() if name in names
    }
    spans |= _computed(row, spans, values)
    fits = _fits(row["results"], spans, read)
    exact = _reads_as(row["results"], values, read) if names <= read.keys() else None
    ways = {row["results"][at]["to"] for at in fits}
    if not fits or (names <= read.keys() and exact is None):
        state = NO_RESULT
    elif len(ways) == 1:
        state, fits = DECIDED, fits if exact is None else (exact,)
    else:
        state = TOO_CLOSE if names <= read.keys() else WAITING
    return Outcome(
        state,
        fits,
        exact,
        {name: "" if value is None else f"{value:f}" for name, value in values.items()},
        {name: (one.tool, f"{one.error:f}") for name, one in read.items() if one.error},
    )


def _span(row: ReadingRow, read: Read | None) -> _Span:
    if read is None:
        return _Span(Decimal(row["low"]), Decimal(row["high"]))
    if not read.error:
        return _Span(read.value, read.value)
    value, error = Fraction(read.value), Fraction(read.error)
    return _Span(round_digits(value - error, towards=DOWN), round_digits(value + error, towards=UP))


def _computed(
    row: StepRow, spans: Mapping[str, _Span], values: dict[str, Decimal | None]
) -> dict[str, _Span]:
    """Work out the computed readings as far as they can be; their values are added."""
    known = dict(spans)
    for one in row["computed"]:
        name, used = one["name"], _names(one["form"])
        known[name] = _computed_span(one["form"], {use: known[use] for use in used})
        if all(use in values for use in used):
            values[name] = _value(one["form"], values)
            if values[name] is None:
                known[name] = _Span(INFINITY, -INFINITY)  # nothing: no result that names it fits
            elif all(known[use].low == known[use].high for use in used):
                known[name] = _Span(*[values[name] or Decimal(0)] * 2)
    return {one["name"]: known[one["name"]] for one in row["computed"]}


def _names(form: Compiled) -> set[str]:
    if form[0] == "reading":
        return {str(form[1])}
    return {name for part in form if isinstance(part, list) for name in _names(part)}


def _computed_span(form: Compiled, spans: Mapping[str, _Span]) -> _Span:
    if not all(end.is_finite() for span in spans.values() for end in span):
        return _ANYTHING
    found = bounds_of_form(form, spans)
    return _ANYTHING if isinstance(found, Mistake) else _Span(*found)


def _value(form: Compiled, values: Mapping[str, Decimal | None]) -> Decimal | None:
    finite = {name: value for name, value in values.items() if value is not None}
    found = run_form(form, finite)
    return None if isinstance(found, Mistake) else round_digits(found)


def _fits(
    results: Sequence[ResultRow], spans: Mapping[str, _Span], read: Mapping[str, Read]
) -> tuple[int, ...]:
    """Return every result that can be true, up to the first that is sure."""
    found: list[int] = []
    for at, one in enumerate(results):
        sides = [(_range(side, read), spans[name]) for name, side in one["ranges"].items()]
        if one.get("otherwise") or all(_reaches(*pair) for pair in sides):
            found.append(at)
            if one.get("otherwise") or all(_sure(*pair) for pair in sides):
                break
    return tuple(found)


def _range(side: Side, read: Mapping[str, Read]) -> Range:
    """Put the figures that were looked up in the place of their names."""
    low, high = (
        Cut(read[str(value)].value if value in read else Decimal(value), bool(after))
        for value, after in side
    )
    return Range(low, high)


def _reaches(side: Range, span: _Span) -> bool:
    if span.low == span.high:
        return side.contains(span.low)
    return side.low.value <= span.high and span.low <= side.high.value


def _sure(side: Range, span: _Span) -> bool:
    if span.low == span.high:
        return side.contains(span.low)
    return side.low.value < span.low and span.high < side.high.value


def _reads_as(
    results: Sequence[ResultRow], values: Mapping[str, Decimal | None], read: Mapping[str, Read]
) -> int | None:
    """Return the first result that takes the figures as they were read."""
    for at, one in enumerate(results):
        sides = [(_range(side, read), values[name]) for name, side in one["ranges"].items()]
        if one.get("otherwise") or all(
            value is not None and side.contains(value) for side, value in sides
        ):
            return at
    return None
