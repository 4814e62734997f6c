"""What is saved elsewhere names what was counted: setup always, a tow only where there is one."""

from decimal import Decimal

import pytest

from builder.model.ends import Money
from builder.model.shop import Shop
from builder.model.text import Text
from builder.plan.estimate_options import EstimateOption
from builder.plan.prices import LineKind, price_line
from builder.prints.customer_prices import savings_words

SHOP = Shop(Text("A shop"), Text("https://charts.example/"), Decimal(140), Text("USD"))
PRICE = Money(Decimal(100), Decimal(100))


@pytest.mark.parametrize(
    ("tows", "saves", "words"),
    [
        (0, (50, 60), "$50.00 to $60.00 less than all of it here, setup counted."),
        (1, (-60, -50), "$50.00 to $60.00 more than all of it here, setup and tow counted."),
        (2, (-60, 50), "Up to $50.00 less or $60.00 more than all of it here, "
                       "setup and both tows counted."),
    ],
)  # fmt: skip
def test_a_saving_says_what_is_in_it(tows: int, saves: tuple[int, int], words: str) -> None:
    """And what isn't: the customer's own part."""
    low, high = map(Decimal, saves)
    lines = tuple(price_line(LineKind.TOW, "Tow", PRICE) for _ in range(tows))
    option = EstimateOption("towed-in", "You install it", lines, PRICE, saves=Money(low, high))
    assert savings_words(option, SHOP) == f"{words} Your part and its installation are not in it."
