"""Results in the words of a reader: every limit with its unit.

In: a check and one of its results. Out: the words beside its line; pages use them too.
"""

import re
from collections.abc import Mapping

from builder.model.tree import Check, Reading, Result
from builder.trade.expressions import parse, unit_of
from builder.trade.mistake import Mistake
from builder.trade.units import UNITS, unit

NO_BREAK = "\N{NO-BREAK SPACE}"
_SIGNS = sorted({sign for one in UNITS.values() for sign in (one.symbol, one.sign)}, key=len)
_UNIT = "|".join(map(re.escape, reversed(_SIGNS)))
_VALUE = re.compile(rf"(?<![\w.])(-?\d+(?:[.,]\d+)?) (?=(?:{_UNIT})(?![\w/]))")


def result_words(check: Check, result: Result) -> str:
    """Return a result as it is shown."""
    said = str(result.said)
    if not result.ranges or check.figure:
        return tied(said)
    units = _units(check)
    if list(units) == [""]:
        return tied(_with_unit(_shortened(said, check.readings[0]), units[""]))
    return tied(", ".join(_named(part, units) for part in said.split(", ")))


def _shortened(said: str, reading: Reading) -> str:
    """Leave out a lower end that is only where the instrument's readings begin.

    `-40 to below 70` is `below 70`; a range that takes its upper end in stays as it was written.
    """
    low, to, rest = said.partition(" to ")
    starts = to and rest.startswith("below ") and low == f"{reading.low}"
    return rest if starts else said


def tied(words: str) -> str:
    """Hold every number and its unit together."""
    return _VALUE.sub(rf"\1{NO_BREAK}", words)


def _units(check: Check) -> Mapping[str, str]:
    """Unit of each reading; none where it is a phrase or a plain number."""
    units = {one.name: "" if one.one_of else str(one.unit) for one in check.readings}
    for computed in check.computed:
        expression = parse(computed.expression)
        found = "" if isinstance(expression, Mistake) else unit_of(expression, units)
        units[str(computed.name)] = "" if isinstance(found, Mistake) else found
    return units


def _named(part: str, units: Mapping[str, str]) -> str:
    name = max((name for name in units if part.startswith(f"{name}: ")), key=len, default="")
    return _with_unit(part, units.get(name, ""))


def _with_unit(words: str, symbol: str) -> str:
    known = unit(symbol)
    sign = known.sign if known else symbol
    if not sign or words.endswith("OL"):
        return words
    return f"{words}{sign}" if sign == "°" else f"{words} {sign}"
