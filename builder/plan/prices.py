"""Money to the cent: the lines of an estimate, its tax and its total.

In: hours, prices (one amount or a range), the shop's rate and tax. Out: `PriceLine`s and their
total, in exact decimals. Each line is rounded half up to the cent, as money is; the total is the
sum of the lines and needs no rounding. A line with an unknown amount leaves the total unknown.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from decimal import ROUND_HALF_UP, Decimal
from enum import StrEnum

from builder.model.ends import Money, Part, PartKind
from builder.model.shop import Shop

CENT = Decimal("0.01")


class LineKind(StrEnum):
    """What a line is for."""

    LABOR = "labor"
    PART = "part"
    PRICE = "price"  # a fixed price
    TOW = "tow"
    FEE = "fee"  # of the diagnosis
    TAX = "tax"


@dataclass(frozen=True, slots=True)
class PriceLine:
    """One line of an estimate; amounts are in the shop's currency."""

    kind: LineKind
    name: str  # what it is
    amount: Money | None  # None if unknown
    hours: Decimal | None = None  # of labor
    only_if: str = ""  # of a part, when it is needed if not always

    @property
    def item(self) -> str:
        """What it is, as the customer reads it."""
        return f"{self.name}, only if {self.only_if}" if self.only_if else self.name


def labor_line(item: str, hours: Decimal | None, shop: Shop) -> PriceLine:
    """Price hours at the shop's rate."""
    if hours is None:
        return PriceLine(LineKind.LABOR, item, None)
    amount = round_to_cent(hours * shop.labor_rate)
    return PriceLine(LineKind.LABOR, item, Money(amount, amount), Decimal(hours))


def price_line(kind: LineKind, item: str, price: Money | None) -> PriceLine:
    """Make a line of a price, rounded to the cent."""
    return PriceLine(kind, item, _scaled(price, Decimal(1)) if price else None)


def part_line(part: Part, kind: PartKind) -> PriceLine:
    """Make a line of a part; one that isn't new says so, as an estimate has to.

    Each part is new unless it is described as used, rebuilt or reconditioned: 16 CCR 3353(a).
    A part that is needed only in a case says in which, and costs from nothing to its price.
    """
    words = str(part.part).casefold().split()
    name = str(part.part) if kind in (PartKind.NEW, *words) else f"{part.part}, {kind}"
    sort = LineKind.PRICE if part.is_service else LineKind.PART
    is_certain = part.price is None or part.price.low > 0
    if is_certain and not part.only_if:
        return price_line(sort, name, part.price)
    price = Money(Decimal(0), part.price.high) if part.price else None
    line = price_line(sort, name, price)
    return replace(line, only_if=str(part.only_if or "needed"))


def with_tax(lines: Iterable[PriceLine], shop: Shop) -> tuple[PriceLine, ...]:
    """Add the tax line: on parts, on everything or on nothing, as the shop sets it."""
    lines = tuple(lines)
    taxed = [line for line in lines if shop.tax_base == "all" or line.kind is LineKind.PART]
    if not shop.tax_percent or shop.tax_base == "none" or not taxed:
        return lines
    base, rate = total_price(taxed), shop.tax_percent / 100
    on = "" if shop.tax_base == "all" else " on parts"
    item = f"Tax{on}, {shop.tax_percent.normalize():f}%"
    return (*lines, PriceLine(LineKind.TAX, item, _scaled(base, rate) if base else None))


def total_price(lines: Iterable[PriceLine]) -> Money | None:
    """Add up the lines; None if the amount of one is unknown."""
    low = high = Decimal("0.00")
    for line in lines:
        if line.amount is None:
            return None
        low, high = low + line.amount.low, high + line.amount.high
    return Money(low, high)


def difference(cost: Money, other: Money) -> Money:
    """Return by how much the first cost is higher: its ends hold for every draw from the ranges."""
    return Money(cost.low - other.high, cost.high - other.low)


def cost_with_comebacks(cost: Money, chance: Decimal) -> Money:
    """Return the average cost of an option that may have to be done again.

    cost + chance x cost: one comeback at most. The chance is from 0 to 1.
    """
    return _scaled(cost, 1 + chance)


def _scaled(money: Money, factor: Decimal) -> Money:
    return Money(round_to_cent(money.low * factor), round_to_cent(money.high * factor))


def round_to_cent(amount: Decimal) -> Decimal:
    """Round half up to the cent."""
    return amount.quantize(CENT, ROUND_HALF_UP)
