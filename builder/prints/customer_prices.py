"""What the customer's sheet says of its prices.

In: the shop, what an option saves. Out: sentences.
"""

from builder.model.ends import Money
from builder.model.shop import Shop
from builder.wording.value_text import amounts_text, number_text

BASES = {"parts": "parts", "all": "everything"}


def price_words(shop: Shop) -> str:
    """Say the currency, the tax, what is new, what is owed anyway, and how long prices hold."""
    tax = ""
    if shop.tax_percent and shop.tax_base in BASES:
        tax = f"Tax is {number_text(shop.tax_percent)}% on {BASES[shop.tax_base]}."
    sentences = (
        f"Prices in {shop.currency}. A range is given where the price is not fixed.",
        tax,
        "Parts are new unless they are marked used or rebuilt.",
        "The diagnosis is owed whatever you choose." if shop.diagnosis_fee else "",
        f"Good until {shop.prices_hold} from the date above." if shop.prices_hold else "",
        "Not offered means that we do not do it, for the reason given.",
    )
    return " ".join(filter(None, sentences))


def savings_words(saves: Money, shop: Shop) -> str:
    """Say what is saved by having a part of the work done elsewhere."""
    own = "Your part and its installation are not in it."
    if saves.low >= 0:
        less = amounts_text(saves, shop)
        return f"{less} less than all of it here, after setup and any tow. {own}"
    if saves.high <= 0:
        more = amounts_text(Money(-saves.high, -saves.low), shop)
        return f"{more} more than all of it here, with setup and any tow. {own}"
    less = amounts_text(Money(saves.high, saves.high), shop)
    more = amounts_text(Money(-saves.low, -saves.low), shop)
    return f"Up to {less} less than all of it here, or up to {more} more. {own}"
