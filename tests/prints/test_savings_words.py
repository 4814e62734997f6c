"""A saving counts the customer's own part: the price of the option leaves it out."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model.ends import Money
from builder.model.shop import Shop
from builder.model.text import Text
from builder.plan.estimate_options import EstimateOption
from builder.plan.prices import LineKind, difference, price_line
from builder.prints.customer_prices import savings_words

SHOP = Shop(Text("A shop"), Text("https://charts.example/"), Decimal(140), Text("USD"))
PRICE = Money(Decimal(100), Decimal(100))


def words_of(saves: Money, tows: int = 0) -> str:
    """Return what the sheet says of an option with so many tows."""
    lines = tuple(price_line(LineKind.TOW, "Tow", PRICE) for _ in range(tows))
    return savings_words(EstimateOption("towed-in", "Own part", lines, PRICE, saves=saves), SHOP)


@pytest.mark.parametrize(
    ("tows", "saves", "included", "words"),
    [
        (0, (50, 60), "the setup is", "It saves you money only if they come to less than $50.00 "
                                      "to $60.00."),
        (1, (-60, -50), "the setup and the tow are", "Even so it is $50.00 to $60.00 more than "
                                                     "all of it here."),
        (2, (-60, 50), "the setup and both tows are", "It saves you money only if they come to "
                                                      "less than $50.00 at best."),
    ],
)  # fmt: skip
def test_a_saving_says_what_is_in_it(
    tows: int, saves: tuple[int, int], included: str, words: str
) -> None:
    """And what isn't: the customer's own part."""
    low, high = map(Decimal, saves)
    without = f"Your part and its installation are not in this price; {included}."
    assert words_of(Money(low, high), tows) == f"{without} {words}"


@given(st.integers(1, 10**7), st.integers(1, 10**7), st.integers(1, 10**7))
def test_the_figure_is_where_both_cost_the_same(here: int, option: int, part: int) -> None:
    """Own arithmetic, in cents: with the part it is cheaper exactly below the figure printed."""
    total, own, bought = (Decimal(cents) / 100 for cents in (here, option, part))
    text = words_of(difference(Money(total, total), Money(own, own)))
    figure = Decimal(text.partition("$")[2].split(" ")[0].rstrip(".").replace(",", ""))
    saves = "less than $" in text and bought < figure
    assert saves is (own + bought < total)
