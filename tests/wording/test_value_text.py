"""Amounts as the customer reads them."""

from dataclasses import replace
from decimal import Decimal

import pytest

from builder.model.ends import Money
from builder.model.shop import Shop
from builder.model.text import Text
from builder.wording.value_text import money_text

SHOP = Shop(Text("Bay"), Text("https://bay.example/"), Decimal(140), Text("USD"))


@pytest.mark.parametrize(
    ("low", "high", "currency", "mark", "text"),
    [
        ("1234.5", "1234.5", "USD", "point", "$1,234.50"),
        ("115", "1150", "USD", "point", "$115.00 to $1,150.00"),
        ("1234.5", "1234.5", "EUR", "comma", "€1.234,50"),
        ("7", "7", "CHF", "point", "CHF 7.00"),
        ("-12.3", "-12.3", "USD", "point", "-$12.30"),
    ],
)
def test_money_has_its_sign_and_its_groups(
    low: str, high: str, currency: str, mark: str, text: str
) -> None:
    """To the cent, whatever the currency."""
    shop = replace(SHOP, currency=Text(currency), decimal_mark=mark)
    assert money_text(Money(Decimal(low), Decimal(high)), shop) == text
