"""A reading as people type it, and as pages show it in both systems.

In: "5,1 V", "350 mV", "0.35kΩ", "-40 °F", "OL". Out: `Quantity` with the digits of the instrument,
`Over` when the instrument shows that it is over its range, or a `Mistake`.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from builder.trade.exact import DOWN, round_digits, round_to_step
from builder.trade.mistake import Mistake
from builder.trade.units import Unit, convert, find_unit, nearest_units, same_kind

_MINUS = str.maketrans("−–‒", "---")
_BLANK = "[ \u00a0\u202f]"  # plain, no-break, narrow no-break
_READING = re.compile(
    rf"(?P<sign>[-+]?)\s*(?P<whole>[0-9]{{1,3}}(?:{_BLANK}[0-9]{{3}})+(?![0-9])|[0-9]+)?"
    r"(?P<part>[.,][0-9]+)?[.]?\s*(?P<unit>.*)"
)
_OVER = re.compile(r"(?P<sign>[-+]?)\s*[.]?[O0][.]?L[.]?\s*(?P<unit>.*)|∞\s*(?P<sole>.*)", re.I)

# The same thing in the other system.
_OTHER_SYSTEM: Mapping[str, str] = {
    "kPa": "psi",
    "bar": "psi",
    "psi": "kPa",
    "inHg": "kPa",
    "Nm": "lb-ft",
    "lb-ft": "Nm",
    "lb-in": "Nm",
    "°C": "°F",
    "°F": "°C",
    "K": "degF diff",
    "degF diff": "K",
    "mm": "in",
    "in": "mm",
    "km": "mi",
    "mi": "km",
    "km/h": "mph",
    "mph": "km/h",
}


@dataclass(frozen=True, slots=True)
class Quantity:
    """A value with the digits it was read with, and the symbol of its unit."""

    value: Decimal
    unit: str


@dataclass(frozen=True, slots=True)
class OverRange:
    """The instrument shows that it is over its range: an open circuit, or a range to raise."""

    unit: str


def parse_quantity(text: str, unit_wanted: str | None = None) -> Quantity | OverRange | Mistake:
    """Read a typed value; without a unit it is in `unit_wanted`, with another it is converted."""
    quantity = typed_quantity(text, unit_wanted)
    if not isinstance(quantity, Quantity):
        return quantity
    return convert_quantity(quantity, unit_wanted or quantity.unit)


def typed_quantity(text: str, unit_wanted: str | None = None) -> Quantity | OverRange | Mistake:
    """Read a typed value in the unit it was typed in, which must be of the kind of `unit_wanted`.

    For comparing with a limit: converting exactly, with `units.convert`, moves it to
    neither side; `converted` rounds it to the digits that the instrument had.
    """
    typed = text.strip().translate(_MINUS)
    over = _OVER.fullmatch(typed)
    if over:
        return _over(over, unit_wanted)
    match = _READING.fullmatch(typed)
    if not match or not (match["whole"] or match["part"]):
        shown = text.strip()
        return Mistake(
            f"{shown} is no reading: a number comes first, as in 12.6"
            if shown
            else "no reading yet: type a number, as in 12.6"
        )
    wrong = _number_mistake(match)
    symbol = wrong or _unit(match["unit"], unit_wanted)
    if isinstance(symbol, Mistake):
        return symbol
    whole = re.sub(_BLANK, "", match["whole"] or "0")
    value = Decimal(f"{match['sign']}{whole}{(match['part'] or '').replace(',', '.')}")
    return _kind_mistake(symbol, unit_wanted) or Quantity(value, symbol)


def _number_mistake(match: re.Match[str]) -> Mistake | None:
    whole, part, rest = match["whole"] or "", match["part"] or "", match["unit"]
    if find_unit(rest) is None and re.search(r"[0-9]", rest) and not re.match(r"[eE]", rest):
        return Mistake(
            f"{match[0]}: two numbers; enter one reading at a time", at=match.start("unit")
        )
    if re.match(r"[eE][-+]?[0-9]", rest):
        return Mistake(f"{match[0]}: write the number out, or use a larger unit")
    if part.startswith(",") and len(part) == 4 and not whole.startswith("0"):
        digits = part[1:]
        both = f"{whole}.{digits} or {whole}{digits}"
        return Mistake(f"{whole}{part} can be read two ways: type {both}")
    return None


def _unit(text: str, wanted: str | None) -> str | Mistake:
    if not text:
        return wanted or Mistake("the unit is missing: write it after the number, as in 12.6 V")
    known = find_unit(text)
    if known:
        return known.symbol
    near = nearest_units(text)
    hint = f"; did you mean {' or '.join(near)}" if near else ""
    hint += f"; this reading is wanted in {wanted}" if wanted else ""
    return Mistake(f"{text} is no unit in use here{hint}", near[0] if len(near) == 1 else None)


def _over(match: re.Match[str], wanted: str | None) -> OverRange | Mistake:
    if match["sign"] == "-":
        return Mistake("over the range below zero: swap the leads or raise the range")
    symbol = _unit(match["unit"] or match["sole"] or "", wanted)
    if isinstance(symbol, Mistake):
        return symbol
    return _kind_mistake(symbol, wanted) or OverRange(symbol)


def _kind_mistake(given: str, wanted: str | None) -> Mistake | None:
    if wanted is None or same_kind(given, wanted):
        return None
    known = find_unit(given)
    kind = f"measures {known.kind}" if known else "is no unit in use here"
    return Mistake(f"{given} {kind}; this reading is wanted in {wanted}")


def convert_quantity(quantity: Quantity, wanted: str) -> Quantity:
    """The same quantity in another unit of its kind, with the digits the instrument had.

    The step of the result is the largest power of ten not above the step that was read, so nothing
    read is lost: going back and rounding to the old step gives the old value.
    """
    given, target = find_unit(quantity.unit), find_unit(wanted)
    if given == target or given is None or target is None:
        return Quantity(quantity.value, target.symbol if target else quantity.unit)
    size = Fraction(_step(quantity.value)) * given.factor / target.factor
    step = Decimal(1).scaleb(round_digits(size, towards=DOWN).adjusted())
    exact = convert(quantity.value, given.symbol, target.symbol)
    return Quantity(Decimal(f"{round_to_step(exact, step):f}"), target.symbol)


def _step(value: Decimal) -> Decimal:
    """The smallest step that the written digits can show: 0.01 for 12.60, 1 for 1200."""
    exponent = value.as_tuple().exponent
    assert isinstance(exponent, int)  # readings are finite
    return Decimal(1).scaleb(min(exponent, 0))


def format_quantity(quantity: Quantity, decimal_mark: str = "point") -> str:
    """Write a quantity for a page: `12.6 V`, `−40 °C`; `decimal_mark` is point or comma."""
    digits = f"{quantity.value:f}".replace("-", "−")
    known = find_unit(quantity.unit)
    label = known.label if known else quantity.unit
    return f"{digits.replace('.', ',') if decimal_mark == 'comma' else digits} {label}"


def side_by_side(
    quantity: Quantity, shop_units: Mapping[str, str], decimal_mark: str = "point"
) -> str:
    """Write a quantity in the shop's unit first, then in the other system: `221 kPa (32 psi)`.

    `shop_units` maps a kind (pressure, torque, temperature, distance, speed) to a unit. Where the
    shop has no say the unit that was read comes first; what is the same everywhere is shown alone.
    """
    own = find_unit(quantity.unit)
    if own is None or own.symbol not in _OTHER_SYSTEM:
        return format_quantity(quantity, decimal_mark)
    first = _preferred(own, shop_units)
    second = own.symbol if first != own.symbol else _OTHER_SYSTEM[own.symbol]
    both = [
        format_quantity(convert_quantity(quantity, one), decimal_mark) for one in (first, second)
    ]
    return f"{both[0]} ({both[1]})"


def _preferred(own: Unit, shop_units: Mapping[str, str]) -> str:
    """The shop's unit of this kind; its unit of distance is for the road, not for a gap."""
    chosen = find_unit(shop_units.get(own.kind, ""))
    not_on_the_road = own.kind == "distance" and own.symbol not in ("km", "mi")
    fits = chosen is not None and chosen.kind == own.kind and not not_on_the_road
    return chosen.symbol if chosen and fits else own.symbol
