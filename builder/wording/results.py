"""Results as text: every limit with its unit.

In: a check and one of its results. Out: the text beside its line on charts, and on pages.
"""

import re
from collections.abc import Mapping

from builder.model.checks import Check, Result
from builder.trade.expressions import parse_expression, unit_of_expression
from builder.trade.mistake import Mistake
from builder.trade.units import UNITS
from builder.wording.value_text import spoken_limit, unit_label

NO_BREAK = "\N{NO-BREAK SPACE}"
_LABELS = sorted({text for unit in UNITS.values() for text in (unit.symbol, unit.label)}, key=len)
_UNIT = "|".join(map(re.escape, reversed(_LABELS)))
_VALUE = re.compile(rf"(?<![\w.])(-?\d+(?:[.,]\d+)?) (?=(?:{_UNIT})(?![\w/]))")


def result_words(check: Check, result: Result) -> str:
    """Return a result as it is printed."""
    text = str(result.text)
    if not result.ranges or check.figure:
        return tied(text)
    units = _units(check)
    spans = {reading.name: (f"{reading.low}", f"{reading.high}") for reading in check.readings}
    if list(units) == [""]:
        words = _with_unit(_shortened(text, spans[""]), units[""])
    else:
        words = ", ".join(_named(part, units, spans) for part in text.split(", "))
    return tied(spoken_limit(words))


def _shortened(text: str, span: tuple[str, str]) -> str:
    """Leave out an end of a range that is also the end of the reading's range.

    Of readings from -50 to 50, `-50 to below 10` is `below 10`, `-50 to 10` is `at most 10`, and
    `10 to 50` is `at least 10`.
    """
    low, to, high = text.partition(" to ")
    if not to or (low, high) == span:
        return text
    if low == span[0]:
        return high if high.startswith("below ") else f"at most {high}"
    return f"at least {low}" if high == span[1] and low[0] in "-0123456789" else text


def tied(words: str) -> str:
    """Keep every number and its unit on one line."""
    return _VALUE.sub(rf"\1{NO_BREAK}", words)


def _units(check: Check) -> Mapping[str, str]:
    """Return the unit of each reading; "" for a phrase or a plain number."""
    readings = check.readings
    units = {reading.name: "" if reading.one_of else str(reading.unit) for reading in readings}
    for computed in check.computed:
        expression = parse_expression(computed.expression)
        unit = "" if isinstance(expression, Mistake) else unit_of_expression(expression, units)
        units[str(computed.name)] = "" if isinstance(unit, Mistake) else unit
    return units


def _named(part: str, units: Mapping[str, str], spans: Mapping[str, tuple[str, str]]) -> str:
    name = max((name for name in units if part.startswith(f"{name}: ")), key=len, default="")
    text = part.removeprefix(f"{name}: ")
    short = _shortened(text, spans[name]) if name in spans else text
    return _with_unit(f"{name}: {short}" if name else part, units.get(name, ""))


def _with_unit(words: str, symbol: str) -> str:
    label = unit_label(symbol)
    if not label or words.endswith(("OL", " spec")):
        return words
    return f"{words}{label}" if label == "°" else f"{words} {label}"
