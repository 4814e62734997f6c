"""What the customer's sheet says of its prices.

In: the shop, what an option saves. Out: sentences.
"""

from collections.abc import Iterator, Sequence

from builder.model.ends import Money
from builder.model.shop import Shop
from builder.plan.estimate_options import EstimateOption
from builder.plan.prices import LineKind
from builder.plan.refused_options import FIT_HERE, LEAVE
from builder.wording.day_text import last_day_text
from builder.wording.value_text import money_text, number_text

BASES = {"parts": "parts", "all": "everything"}


def price_words(shop: Shop, options: Sequence[EstimateOption], day: str) -> str:
    """Say the currency, the tax, what is new, what is owed anyway, and how long prices hold.

    Only what the options need: no word on tax where there is none, nor on ranges or parts.
    """
    kinds = {line.kind for option in options for line in option.lines}
    amounts = [line.amount for option in options for line in option.lines if line.amount]
    has_ranges = any(amount.low != amount.high for amount in amounts)
    tax = shop.tax_percent if shop.tax_base in BASES and LineKind.TAX in kinds else None
    sentences = (
        f"Prices in {shop.currency}.",
        "A range is given where the price is not fixed." if has_ranges else "",
        f"Tax is {number_text(tax)}% on {BASES[shop.tax_base]}." if tax else "",
        "Parts are new unless they are marked used or rebuilt." if LineKind.PART in kinds else "",
        "This diagnosis is owed once, whatever you choose." if shop.diagnosis_fee else "",
        _good_until(shop, day),
    )
    return " ".join(filter(None, sentences))


def advice_words(options: Sequence[EstimateOption], cheapest: EstimateOption, shop: Shop) -> str:
    """Say which full repair the shop advises, and which costs least.

    What is done here is the fix as the tree has it; another one is cheaper, or the same.
    """
    here = next((one for one in options if one.id == FIT_HERE and not one.not_offered), cheapest)
    least = f"Lowest price for a full repair: {_with_total(cheapest, shop)}."
    if here is cheapest:
        return f"Our advice, at the lowest price: {_with_total(here, shop)}."
    return f"Our advice: {_with_total(here, shop)}. {least}"


def _with_total(option: EstimateOption, shop: Shop) -> str:
    total = f", {money_text(option.total, shop)}" if option.total else ""
    return f"{option.option}{total}"


def condition_words(option: EstimateOption, shop: Shop) -> str:
    """Say on what an option depends, and what is owed if it turns out not to hold."""
    owed = f"at most {money_text(option.if_not, shop)}" if option.if_not else "no more"
    return (
        f"Only if {option.only_if}, which shows once we begin. If not, {owed} is owed "
        "for the work and the diagnosis, and you choose again."
    )


def _good_until(shop: Shop, day: str) -> str:
    """Say until when the prices hold: by the day where it is known."""
    if not shop.prices_hold:
        return ""
    last = last_day_text(day, str(shop.prices_hold), shop)
    return f"Good until {last}." if last else f"Good for {shop.prices_hold} from the date above."


def together_words(
    options: Sequence[EstimateOption], second: EstimateOption, shop: Shop
) -> Iterator[str]:
    """Yield what each repair comes to with a second diagnosis, where both prices are known."""
    for option in options:
        if option.id != LEAVE and option.total and second.total:
            both = Money(option.total.low + second.total.low, option.total.high + second.total.high)
            yield f"Together with “{option.option}”: {money_text(both, shop)}."


# What is in the price beside the repair, by the number of tows.
_IN_THE_PRICE = ("the setup is", "the setup and the tow are", "the setup and both tows are")


def savings_words(option: EstimateOption, shop: Shop) -> str:
    """Say what the customer's own part may cost before all of it here is cheaper.

    The price of the option leaves out that part and its installation, so the bare difference would
    promise a saving that nobody has. "" for an option with everything in it.
    """
    saves = option.saves
    if saves is None:
        return ""
    included = _IN_THE_PRICE[sum(line.kind is LineKind.TOW for line in option.lines)]
    without = f"Your part and its installation are not in this price; {included}."
    if saves.high <= 0:
        more = money_text(Money(-saves.high, -saves.low), shop)
        return f"{without} Even so it is {more} more than all of it here."
    most = money_text(Money(saves.high, saves.high) if saves.low < 0 else saves, shop)
    best = " at best" if saves.low < 0 else ""
    return f"{without} It saves you money only if they come to less than {most}{best}."
