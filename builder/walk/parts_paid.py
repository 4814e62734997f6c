"""The parts of a job and what is to be paid, as far as both follow from what the tech typed.

In: the options of a fix, which was chosen, the parts in the tech's own words. Out: lines; blanks
for a pen where a number or a price wasn't typed, one question where a part is of another name.
"""

import re
from collections.abc import Iterator, Sequence
from decimal import Decimal

from builder.model.ends import Money
from builder.model.shop import Shop
from builder.plan.estimate_options import EstimateOption
from builder.plan.prices import LineKind, PriceLine, price_line, total_price, with_tax
from builder.walk.estimate_lines import chosen_option
from builder.walk.job_details import BLANK
from builder.walk.used_parts import FilledLine, PartUsed, filled_lines, parts_used
from builder.wording.sentences import capitalized, joined
from builder.wording.value_text import amount_text, money_text

_NONE_USED = re.compile(r"(?:none|nothing|no parts?)\b", re.IGNORECASE)


def part_lines(
    options: Sequence[EstimateOption], chosen: str, own: str, asks_which: bool, shop: Shop
) -> list[str]:
    """Return the parts of an option, each with what was used for it, and what was used beside it.

    `asks_which`: of a part that may be one of several, nothing else on the paper asks for it.
    """
    option = chosen_option(options, chosen)
    if option is None:
        return [capitalized(own)] if own else []
    parts = _parts(option)
    if _NONE_USED.match(own):
        held = "; ".join(
            f"{one.name}, {money_text(one.amount, shop)}" for one in parts if one.amount
        )
        return [f"{capitalized(own)}.", *([f"On the estimate, not used: {held}."] if held else [])]
    if not own:
        return [_part_line(part, asks_which, shop) for part in parts] or ["None."]
    lines, extra = filled_lines(parts, parts_used(own))
    filled = [_filled_line(one, shop) for one in lines if one.used]
    return [*filled, *_open_lines([one.line for one in lines if not one.used], extra, shop)]


def _parts(option: EstimateOption) -> list[PriceLine]:
    return [line for line in option.lines if line.kind is LineKind.PART]


def _filled_line(filled: FilledLine, shop: Shop) -> str:
    """Write what was used, with its price, and what the estimate held where that is another."""
    amount = filled.line.amount
    held = money_text(amount, shop) if amount else ""
    words = "; ".join(_used_words(one, filled.line.name, held, shop) for one in filled.used)
    is_new = amount is not None and filled.price not in (None, amount.high)
    instead = any(one.instead_of for one in filled.used)
    estimate = f" (estimate: {filled.line.name if instead else ''}, {held})".replace(": , ", ": ")
    return capitalized(words) + (estimate if is_new or instead else "")


def _used_words(used: PartUsed, name: str, held: str, shop: Shop) -> str:
    """Write a part that was used, with blanks for what nobody typed of it."""
    price = amount_text(used.price, shop) if used.price is not None else ""
    price = price or (f"{held} on the estimate" if held and not used.instead_of else "")
    number = f"part number {used.number or BLANK}"
    more = f", {used.more}" if used.more else ""
    return f"{used.name or name}{more}, {number}, {price or f'price {BLANK}'}"


def _open_lines(left: Sequence[PriceLine], extra: Sequence[PartUsed], shop: Shop) -> Iterator[str]:
    """Yield what fills no line of the estimate, and the lines that nothing fills: one question."""
    yield from (capitalized(_used_words(one, one.name, "", shop)) for one in extra)
    for line in left:
        held = f"{line.name}, {money_text(line.amount, shop)}" if line.amount else line.name
        instead = " and ".join(one.name for one in extra)
        if line.only_if:
            yield f"On the estimate, only if {line.only_if}, not used: {held}."
        else:
            yield (
                f"On the estimate, {held}: ☐ not used"
                + (f", {instead} instead" if instead else "")
                + f"  ☐ used, part number {BLANK}, price {BLANK}"
            )


def _part_line(part: PriceLine, asks_which: bool, shop: Shop) -> str:
    """Write a part with its price, and blanks for its number and for which it was of several."""
    which = f", which: {BLANK}" if asks_which and " or " in part.name else ""
    installed = f" (only if {part.only_if}), installed: {BLANK}" if part.only_if else ""
    price = f", {money_text(part.amount, shop)} on the estimate" if part.amount else ""
    number = "part numbers" if " and " in part.name else "part number"
    return f"{capitalized(part.name)}{price}{installed}{which}, {number} {BLANK}"


def pay_lines(
    options: Sequence[EstimateOption], chosen: str, own_parts: str, shop: Shop
) -> list[str]:
    """Return what is to be paid where it isn't the estimate: without parts, or out of a range."""
    option = chosen_option(options, chosen)
    if option is None or option.total is None:
        return []
    taxed = [line for line in option.lines if line.kind is not LineKind.TAX]
    rest = [line for line in taxed if line.kind is not LineKind.PART]
    if _NONE_USED.match(own_parts) and len(rest) < len(taxed):
        left = total_price(with_tax(rest, shop))
        return [f"To pay without those parts: {money_text(left, shop)}"] if left else []
    used = () if _NONE_USED.match(own_parts) else parts_used(own_parts)
    lines, extra = filled_lines(_parts(option), used)
    open_ = [one for one in lines if not (one.used or (own_parts and one.line.only_if))]
    paid = _paid(rest, [one for one in lines if one not in open_], extra, shop)
    is_fixed = option.total.low == option.total.high
    if is_fixed and (not used or (not extra and paid in (None, option.total.low))):
        return []
    words = money_text(Money(paid, paid), shop) if paid is not None else BLANK
    if not open_:
        return [f"To pay: {words}", *_over(paid, option.total, shop)]
    if extra and paid is not None:
        return [f"To pay: {words} without {joined(one.line.name for one in open_)}"]
    names = [line.name for line in taxed if line.amount and line.amount.low != line.amount.high]
    return [f"The range comes from: {joined(names)}. To pay: {BLANK}"]


def _over(paid: Decimal | None, total: Money, shop: Shop) -> list[str]:
    """Ask for the customer's consent where more is to be paid than was agreed to."""
    if paid is None or paid <= total.high:
        return []
    more = amount_text(paid - total.high, shop)
    return [f"That is {more} over the estimate: the customer's OK, name and day: {BLANK * 2}"]


def _paid(
    rest: Sequence[PriceLine], filled: Sequence[FilledLine], extra: Sequence[PartUsed], shop: Shop
) -> Decimal | None:
    """Return the sum with what the parts came to, and their tax; None where a price is missing."""
    prices = [*(one.price for one in filled if one.used), *(one.price for one in extra)]
    known = [one for one in prices if one is not None]
    parts = [price_line(LineKind.PART, "part", Money(one, one)) for one in known]
    total = total_price(with_tax([*rest, *parts], shop))
    return total.low if total and total.low == total.high and len(known) == len(prices) else None
