"""Results in the words of a reader: every limit with its unit.

In: a check and one of its results. Out: the words beside its line; pages use them too.
"""

import re
from collections.abc import Mapping

from builder.model.checks import Check, Result
from builder.trade.expressions import parse_expression, unit_of_expression
from builder.trade.mistake import Mistake
from builder.trade.units import UNITS, find_unit

NO_BREAK = "\N{NO-BREAK SPACE}"
_SIGNS = sorted({sign for one in UNITS.values() for sign in (one.symbol, one.label)}, key=len)
_UNIT = "|".join(map(re.escape, reversed(_SIGNS)))
_VALUE = re.compile(rf"(?<![\w.])(-?\d+(?:[.,]\d+)?) (?=(?:{_UNIT})(?![\w/]))")


def result_words(check: Check, result: Result) -> str:
    """Return a result as it is shown."""
    said = str(result.said)
    if not result.ranges or check.figure:
        return tied(said)
    units = _units(check)
    spans = {one.name: (f"{one.low}", f"{one.high}") for one in check.readings}
    if list(units) == [""]:
        return tied(_with_unit(_shortened(said, spans[""]), units[""]))
    return tied(", ".join(_named(part, units, spans) for part in said.split(", ")))


def _shortened(said: str, span: tuple[str, str]) -> str:
    """Leave out an end that is only where the instrument's readings begin or end.

    Of readings from -50 to 50, `-50 to below 10` is `below 10`, `-50 to 10` is `at most 10`, and
    `10 to 50` is `at least 10`.
    """
    low, to, high = said.partition(" to ")
    if not to or (low, high) == span:
        return said
    if low == span[0]:
        return high if high.startswith("below ") else f"at most {high}"
    return f"at least {low}" if high == span[1] and low[0] in "-0123456789" else said


def tied(words: str) -> str:
    """Hold every number and its unit together."""
    return _VALUE.sub(rf"\1{NO_BREAK}", words)


def _units(check: Check) -> Mapping[str, str]:
    """Unit of each reading; none where it is a phrase or a plain number."""
    units = {one.name: "" if one.one_of else str(one.unit) for one in check.readings}
    for computed in check.computed:
        expression = parse_expression(computed.expression)
        found = "" if isinstance(expression, Mistake) else unit_of_expression(expression, units)
        units[str(computed.name)] = "" if isinstance(found, Mistake) else found
    return units


def _named(part: str, units: Mapping[str, str], spans: Mapping[str, tuple[str, str]]) -> str:
    name = max((name for name in units if part.startswith(f"{name}: ")), key=len, default="")
    said = part.removeprefix(f"{name}: ")
    short = _shortened(said, spans[name]) if name in spans else said
    return _with_unit(f"{name}: {short}" if name else part, units.get(name, ""))


def _with_unit(words: str, symbol: str) -> str:
    known = find_unit(symbol)
    sign = known.label if known else symbol
    if not sign or words.endswith("OL"):
        return words
    return f"{words}{sign}" if sign == "°" else f"{words} {sign}"
