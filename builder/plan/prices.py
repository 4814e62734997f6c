"""Money to the cent: the lines of a sum, its tax and its total.

In: hours, prices (one amount or a range), the shop's rate and tax. Out: `Line`s and their total, in
exact decimals. Every line is rounded half up to the cent, as money is; the total is the sum of the
lines and needs no rounding. What is not known stays not known: one such line leaves the total open.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from enum import StrEnum

from builder.model.shop import Shop
from builder.model.tree import Money

CENT = Decimal("0.01")


class Kind(StrEnum):
    """What a line is about."""

    LABOUR = "labour"
    PART = "part"
    PRICE = "price"  # a fixed price
    TOW = "tow"
    TAX = "tax"


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a sum; amounts are in the shop's currency."""

    kind: Kind
    item: str  # what it is, as the customer reads it
    amount: Money | None  # None is not known
    hours: Decimal | None = None  # of labour


def labour(item: str, hours: Decimal | None, shop: Shop) -> Line:
    """Price hours at the shop's rate."""
    if hours is None:
        return Line(Kind.LABOUR, item, None)
    amount = rounded(hours * shop.labor_rate)
    return Line(Kind.LABOUR, item, Money(amount, amount), Decimal(hours))


def priced(kind: Kind, item: str, price: Money | None) -> Line:
    """Take a price as it was given."""
    return Line(kind, item, Money(rounded(price.low), rounded(price.high)) if price else None)


def with_tax(lines: Iterable[Line], shop: Shop) -> tuple[Line, ...]:
    """Add the line of the tax, on parts, on all or on nothing, as the shop sets it."""
    lines = tuple(lines)
    taxed = [line for line in lines if shop.tax_base == "all" or line.kind is Kind.PART]
    if not shop.tax_percent or shop.tax_base == "none" or not taxed:
        return lines
    base, share = total(taxed), shop.tax_percent / 100
    amount = Money(rounded(base.low * share), rounded(base.high * share)) if base else None
    on = "" if shop.tax_base == "all" else " on parts"
    return (*lines, Line(Kind.TAX, f"Tax{on}, {shop.tax_percent.normalize():f} %", amount))


def total(lines: Iterable[Line]) -> Money | None:
    """Add up the lines; None if one of them is not known."""
    low = high = Decimal("0.00")
    for line in lines:
        if line.amount is None:
            return None
        low, high = low + line.amount.low, high + line.amount.high
    return Money(low, high)


def with_coming_back(cost: Money, chance: Decimal) -> Money:
    """Return what an option costs on the average if it has to be done again with some chance.

    cost + chance x cost; once again, not again and again. The chance is from 0 to 1.
    """
    return Money(rounded(cost.low * (1 + chance)), rounded(cost.high * (1 + chance)))


def rounded(amount: Decimal) -> Decimal:
    """Round half up to the cent."""
    return amount.quantize(CENT, ROUND_HALF_UP)
