"""Numbers, money, times, units and vehicles as text.

In: values of the model. Out: plain text; nothing here is HTML.
"""

import re
from decimal import Decimal
from fractions import Fraction

from builder.model.ends import Money
from builder.model.shop import Shop
from builder.model.tree import Scope
from builder.trade.units import convert, find_unit

CURRENCY_SIGNS = {"USD": "$", "CAD": "$", "AUD": "$", "NZD": "$", "GBP": "£", "EUR": "€"}

_LIMIT = re.compile(r"\bat (most|least) ([^,]+)")


def spoken_limit(text: str) -> str:
    """Put a limit as people say it: `at most 0.5 V` is `0.5 V or less`."""
    return _LIMIT.sub(lambda m: f"{m[2]} or {'less' if m[1] == 'most' else 'more'}", text)


def scope_text(scope: Scope) -> str:
    """Return make, model and years: `Corvane Tern 2017 to 2022`."""
    name = f"{scope.make} {scope.model}"
    if not scope.years:
        return name
    first, last = scope.years
    return f"{name} {first}" if first == last else f"{name} {first} to {last}"


def amount_text(value: Decimal, shop: Shop) -> str:
    """Write an amount to the cent, with the sign of its currency: `$1,234.50`."""
    text = f"{value:,.2f}"
    if shop.decimal_mark == "comma":
        text = text.translate({ord(","): ".", ord("."): ","})
    sign = CURRENCY_SIGNS.get(str(shop.currency), f"{shop.currency} ")
    return f"-{sign}{text[1:]}" if text.startswith("-") else f"{sign}{text}"


def money_text(money: Money, shop: Shop) -> str:
    """Write an amount or a range of amounts in the shop's currency."""
    low, high = amount_text(money.low, shop), amount_text(money.high, shop)
    return low if low == high else f"{low} to {high}"


def torque_text(newton_meters: Decimal) -> str:
    """Write a torque in pound-feet first, as a torque wrench in the US has it."""
    return f"{round(convert(newton_meters, 'Nm', 'lb-ft'))} lb-ft ({newton_meters:f} N·m)"


def number_text(value: Decimal) -> str:
    """Write a number without needless zeros or an exponent."""
    text = f"{value:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def unit_label(symbol: str) -> str:
    """Return a unit as it is printed: Ω for ohm."""
    unit = find_unit(symbol)
    return unit.label if unit else symbol


def grouped_number(value: Decimal) -> str:
    """Write a number with its digits in groups of three where there are many."""
    return f"{Decimal(number_text(value)):,}".replace(",", "\N{NARROW NO-BREAK SPACE}")


def duration_text(value: Fraction) -> str:
    """Write minutes as hours and minutes where there are many; whole minutes only."""
    whole = round(value)
    if whole < 90:
        return f"{whole} min"
    hours, rest = divmod(whole, 60)
    return f"{hours} h {rest} min" if rest else f"{hours} h"
