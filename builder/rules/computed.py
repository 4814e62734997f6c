"""A computed reading that cannot be worked out: a sign or a function that does not exist, a name
that is no reading of the check, a division by something that can be zero.

Why: The walk could not tell which way is taken, and neither could anybody at the vehicle.

Wrong:

    drop:
      check: Battery and lamp beside each other
      when: [lamp on]
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
      check: Battery and lamp beside each other
      when: [lamp on]
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

Fix: Use the names under `readings`, `+ - * /` with blanks round them, brackets, and the functions
of the trade; let the reading below a division begin above zero.
"""

from collections.abc import Iterator, Mapping
from decimal import Decimal

from builder.model.finding import Finding, Severity
from builder.model.ranges import EVERYTHING, INFINITY, between
from builder.model.text import Position, Text
from builder.model.tree import Check
from builder.rules.shared.limits import measuring_checks
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.suggestions import suggestion
from builder.trade.expression_nodes import Expression
from builder.trade.expressions import bounds_of_expression, parse_expression
from builder.trade.mistake import Mistake

RULE = Rule(
    name="computed",
    family=Family.READINGS,
    severity=Severity.ERROR,
    summary="A computed reading that cannot be worked out.",
)
WHY = "nobody could tell which way is taken"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every computed reading that cannot be worked out."""
    for _, body in measuring_checks(facts):
        yield from _sums(body)


def _sums(body: Check) -> Iterator[Finding]:
    known = {one.name: (one.low, one.high) for one in body.readings}
    for sum_ in body.computed:
        text = sum_.expression
        formula = parse_expression(text)
        if isinstance(formula, Mistake):
            hint = (
                f"write `{formula.instead}`" if formula.instead else "write it like `one - other`"
            )
            yield _finding(text, formula, f"`{text}` cannot be worked out: {formula.message}", hint)
            continue
        unknown = [name for name in formula.names if name not in known]
        if unknown:
            yield _unknown(text, formula, unknown[0], known)
            continue
        if mistake := _fails(body, sum_.name, formula, known):
            message = f"`{text}` cannot always be worked out: {mistake.message}"
            yield _finding(text, mistake, message, "narrow `from` and `to` of the readings it uses")
        found = bounds_of_expression(formula, known)
        known[str(sum_.name)] = found if isinstance(found, tuple) else (-INFINITY, INFINITY)


def _fails(
    body: Check, name: str, formula: Expression, known: Mapping[str, tuple[Decimal, Decimal]]
) -> Mistake | None:
    """Return why it fails where a result asks for it, within what that result takes beside it."""
    for result in body.results:
        if name not in result.ranges:
            continue
        sides = dict(known)
        for one in body.readings:
            side = result.ranges.get(one.name, EVERYTHING).meets(between(one.low, one.high))
            sides[one.name] = (side.low.value, side.high.value)
        finite = all(end.is_finite() for used in formula.names for end in sides[used])
        found = bounds_of_expression(formula, sides) if finite else None
        if isinstance(found, Mistake) and not any(low > high for low, high in sides.values()):
            return found
    return None


def _unknown(text: Text, formula: Expression, name: str, known: Mapping[str, object]) -> Finding:
    at = Mistake("", at=max(formula.text.find(name), 0), length=len(name))
    message = f"`{name}` is no reading of this check"
    return _finding(text, at, message, suggestion(name, known, "name a reading under `readings`"))


def _finding(text: Text, mistake: Mistake, message: str, hint: str) -> Finding:
    """Stand on the sign concerned, where the text lies on one line and is not quoted."""
    file, line, column, end_line, end_column = text.at
    if end_line == line and end_column - column == len(text):
        start = column + mistake.at
        at = Position(file, line, start, line, min(start + mistake.length, end_column))
    else:
        at = text.at
    return RULE.finding(at, message, WHY, hint)
