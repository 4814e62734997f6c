"""A computed reading that can't be calculated: an unknown operator or function, a name that is no
reading of the check, or a division by something that can be zero.

Why: The walk can't choose a result, and neither can the tech at the vehicle.

Wrong:

    drop:
      check: Measure voltage at the battery and at the lamp
      when: [loads-on]
      readings:
        battery: {unit: V, from: 9, to: 16, resolution: 0.01, origin: common practice}
        lamp: {unit: V, from: 0, to: 9, resolution: 0.01, origin: common practice}
      computed:
        drop: batery - lamp
      results:
        - result: {drop: at most 0.5}
          branch: all-good
        - result: {drop: above 0.5}
          branch: repair

Right:

    drop:
      check: Measure voltage at the battery and at the lamp
      when: [loads-on]
      readings:
        battery: {unit: V, from: 9, to: 16, resolution: 0.01, origin: common practice}
        lamp: {unit: V, from: 0, to: 9, resolution: 0.01, origin: common practice}
      computed:
        drop: battery - lamp
      results:
        - result: {drop: at most 0.5}
          branch: all-good
        - result: {drop: above 0.5}
          branch: repair

Fix: Use the names under `readings`, `+ - * /` with spaces around them, parentheses, and the
functions of the trade; keep zero out of the range of a reading that you divide by.
"""

from collections.abc import Iterator, Mapping
from decimal import Decimal

from builder.model.checks import Check
from builder.model.finding import Finding, Severity
from builder.model.ranges import EVERYTHING, INFINITY, between
from builder.model.text import Position, Text
from builder.rules.shared.close_names import suggestion
from builder.rules.shared.limits import measuring_checks
from builder.rules.shared.rule import Facts, Family, Rule
from builder.trade.expression_nodes import Expression
from builder.trade.expressions import bounds_of_expression, parse_expression
from builder.trade.mistake import Mistake

RULE = Rule(
    name="computed",
    family=Family.READINGS,
    severity=Severity.ERROR,
    summary="A computed reading that can't be calculated.",
)
WHY = "nobody can tell which result applies"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every computed reading that can't be calculated."""
    for _, body in measuring_checks(facts):
        yield from _computed_readings(body)


def _computed_readings(body: Check) -> Iterator[Finding]:
    known = {reading.name: (reading.low, reading.high) for reading in body.readings}
    for computed in body.computed:
        text = computed.expression
        formula = parse_expression(text)
        if isinstance(formula, Mistake):
            hint = f"write `{formula.instead or 'one - other'}`"
            yield _finding(text, formula, f"`{text}` can't be calculated: {formula.message}", hint)
            continue
        unknown = [name for name in formula.names if name not in known]
        if unknown:
            yield _unknown(text, formula, unknown[0], known)
            continue
        if mistake := _failure(body, computed.name, formula, known):
            message = f"`{text}` can't always be calculated: {mistake.message}"
            yield _finding(text, mistake, message, "narrow `from` and `to` of the readings it uses")
        bounds = bounds_of_expression(formula, known)
        known[str(computed.name)] = bounds if isinstance(bounds, tuple) else (-INFINITY, INFINITY)


def _failure(
    body: Check, name: str, formula: Expression, known: Mapping[str, tuple[Decimal, Decimal]]
) -> Mistake | None:
    """Return why it fails for a result that uses it, within the result's other ranges."""
    for result in body.results:
        if name not in result.ranges:
            continue
        sides = dict(known)
        for reading in body.readings:
            domain = between(reading.low, reading.high)
            side = result.ranges.get(reading.name, EVERYTHING).intersection(domain)
            sides[reading.name] = (side.low.value, side.high.value)
        finite = all(end.is_finite() for used in formula.names for end in sides[used])
        bounds = bounds_of_expression(formula, sides) if finite else None
        if isinstance(bounds, Mistake) and not any(low > high for low, high in sides.values()):
            return bounds
    return None


def _unknown(text: Text, formula: Expression, name: str, known: Mapping[str, object]) -> Finding:
    at = Mistake("", at=max(formula.text.find(name), 0), length=len(name))
    message = f"`{name}` is not a reading of this check"
    return _finding(text, at, message, suggestion(name, known, "use a name under `readings`"))


def _finding(text: Text, mistake: Mistake, message: str, hint: str) -> Finding:
    """Point at the characters concerned, where the text is on one line and not quoted."""
    file, line, column, end_line, end_column = text.at
    if end_line == line and end_column - column == len(text):
        start = column + mistake.at
        at = Position(file, line, start, line, min(start + mistake.length, end_column))
    else:
        at = text.at
    return RULE.finding(at, message, WHY, hint)
