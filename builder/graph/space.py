"""What the results of a check cover, as boxes over all its readings.

In: a `Check` with a reading, several readings or a figure. Out: its `Space`: one axis per reading,
one box per result, ready for `uncovered` and `overlaps`; and ranges as authors write them.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal
from functools import partial

from builder.model.checks import Check, Computed, Reading, Result
from builder.model.figures import COMPARISONS, NOTHING_SHOWN, PLACES
from builder.model.ranges import EVERYTHING, OVER, TOP, Box, Cut, Range, between
from builder.trade.expressions import Expression, bounds_of_expression, parse_expression
from builder.trade.mistake import Mistake


@dataclass(frozen=True, slots=True)
class Axis:
    """One reading of a check: its domain, and how its values are written."""

    name: str
    unit: str
    domain: Range
    resolution: Decimal | None
    phrases: tuple[str, ...] = ()  # where a reading counts phrases
    formula: Expression | None = None  # where it is computed from others

    def value_as_text(self, value: Decimal) -> str:
        """Write a reading as a technician would say it."""
        if self.phrases:
            return self.phrases[int(value)]
        figure = "OL" if value.is_infinite() else f"{value:f} {self.unit}".strip()
        return f"{self.name} {figure}".strip()

    def side_as_text(self, side: Range) -> str:
        """Write a range of the reading as an author would."""
        if not self.phrases:
            return range_as_text(side, self.domain)
        phrases = (phrase for i, phrase in enumerate(self.phrases) if side.contains(Decimal(i)))
        return " or ".join(phrases)


@dataclass(frozen=True, slots=True)
class Space:
    """All readings of a check, and what each of its results covers of them."""

    axes: tuple[Axis, ...]
    results: tuple[Result, ...]  # those with a box
    boxes: tuple[Box, ...]

    @property
    def domain(self) -> Box:
        """Everything that can be read."""
        return tuple(axis.domain for axis in self.axes)


def space_of(check: Check) -> Space | None:
    """Return the space of a check; None where it has no reading, or one with an empty domain."""
    axes = tuple(_axes(check))
    if not axes or any(axis.domain.empty for axis in axes):
        return None
    results = tuple(result for result in check.results if _has_box(result))
    boxes = tuple(_box(check, axes, result) for result in results)
    return Space(axes, results, boxes)


def _has_box(result: Result) -> bool:
    return not result.otherwise and NOTHING_SHOWN not in result.compares.values()


def _axes(check: Check) -> Iterator[Axis]:
    if check.figure:
        places = tuple(f"a reading {place}" for place in PLACES[check.figure.kind])
        yield Axis("", "", between(Decimal(0), Decimal(2)), Decimal(1), places)
    for reading in check.readings:
        phrases = tuple(reading.one_of)
        yield Axis(reading.name, reading.unit, domain_of(reading), reading.resolution, phrases)
    known = {reading.name: (reading.low, reading.high) for reading in check.readings}
    for computed in check.computed:
        axis = _computed(computed, known)
        known[axis.name] = (axis.domain.low.value, axis.domain.high.value)
        yield axis


def domain_of(reading: Reading) -> Range:
    """Return all that a reading can be; OL where the instrument can go over its range."""
    if reading.to_over:
        return Range(Cut(reading.low, False), OVER.high)
    return between(reading.low, reading.high)


def _computed(computed: Computed, known: Mapping[str, tuple[Decimal, Decimal]]) -> Axis:
    formula = parse_expression(computed.expression)
    if isinstance(formula, Mistake):
        return Axis(computed.name, "", EVERYTHING, None)
    bounds = bounds_of_expression(formula, known)
    domain = EVERYTHING if isinstance(bounds, Mistake) else between(*bounds)
    return Axis(computed.name, "", domain, None, formula=formula)


def _box(check: Check, axes: tuple[Axis, ...], result: Result) -> Box:
    if check.figure:
        return (COMPARISONS[check.figure.kind][result.text],)
    return tuple(map(partial(_side, check, result), axes))


def _side(check: Check, result: Result, axis: Axis) -> Range:
    """Return what a result covers of one reading."""
    written = result.ranges.get(axis.name, EVERYTHING)
    return axis.domain if written == EVERYTHING else with_over_limit(check, axis.name, written)


def with_over_limit(check: Check, reading: str, written: Range) -> Range:
    """Return what a range covers: `above 5` covers OL too, unless a result of the check is `OL`."""
    ordered = with_ends_in_order(written)
    has_over = any(other.ranges.get(reading) == OVER for other in check.results)
    return ordered if has_over or ordered.high != TOP else Range(ordered.low, OVER.high)


def with_ends_in_order(written: Range) -> Range:
    """Turn `14 to 13` into `13 to 14`, which is what the author meant."""
    if not written.empty:
        return written
    (low, low_after), (high, high_after) = written
    return Range(Cut(high, not high_after), Cut(low, not low_after))


def is_one_step(span: Range, resolution: Decimal | None) -> bool:
    """Whether a range is no wider than one step of the reading, such as a single value."""
    low, high = span.low.value, span.high.value
    return low.is_finite() and high.is_finite() and high - low <= (resolution or 0)


def range_as_text(side: Range, domain: Range = EVERYTHING) -> str:
    """Write a range as an author would; an end that is an end of the domain is left open."""
    (low, low_after), (high, high_after) = side
    from_end, to_end = side.low <= domain.low, side.high >= min(domain.high, TOP)
    if side == OVER:
        return "OL"
    if from_end and not to_end:
        return f"at most {high:f}" if high_after else f"below {high:f}"
    if to_end and not from_end:
        return f"above {low:f}" if low_after else f"at least {low:f}"
    if low == high:
        return f"exactly {low:f}"
    return f"{'above ' if low_after else ''}{low:f} to {'' if high_after else 'below '}{high:f}"
