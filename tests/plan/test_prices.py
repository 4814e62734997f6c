"""Money to the cent: rounding, tax, totals, and unknown amounts."""

from decimal import Decimal
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from builder.model.ends import Money
from builder.model.shop import Shop
from builder.model.text import Text
from builder.plan.prices import (
    CENT,
    LineKind,
    cost_with_comebacks,
    labor_line,
    price_line,
    round_to_cent,
    total_price,
    with_tax,
)

AMOUNTS = st.decimals(0, 10_000, places=2)


def shop(rate: str = "140", tax: str = "8", base: str = "parts") -> Shop:
    """Make a shop with a rate and a tax."""
    return Shop(Text("A shop"), Text("https://charts.example/"), Decimal(rate), Text("USD"),
                Decimal(tax), base)  # fmt: skip


def exactly(amount: str) -> Money:
    """Make a price without a range."""
    return Money(Decimal(amount), Decimal(amount))


def test_half_a_cent_goes_up() -> None:
    """As a cash register rounds: 0.125 is 0.13 and 0.135 is 0.14."""
    assert [str(round_to_cent(Decimal(a))) for a in ("0.125", "0.135", "0.1349", "2")] == [
        "0.13", "0.14", "0.13", "2.00"]  # fmt: skip


def test_each_line_is_rounded_on_its_own() -> None:
    """Three times 0.3333 h at 100 is 99.99, as the customer adds it up on the sheet."""
    lines = [labor_line("Labor", Decimal("0.3333"), shop("100")) for _ in range(3)]
    assert total_price(lines) == exactly("99.99")


def test_tax_is_on_parts_on_all_or_on_nothing() -> None:
    """140.00 of labor, 310.00 of parts, 8%."""
    lines = [
        labor_line("Labor", Decimal(1), shop()),
        price_line(LineKind.PART, "part", exactly("310")),
    ]
    taxes = {base: with_tax(lines, shop(base=base))[2:] for base in ("parts", "all", "none")}
    assert [(line.item, line.amount) for line in taxes["parts"]] == [
        ("Tax on parts, 8%", exactly("24.80"))
    ]
    assert [(line.item, line.amount) for line in taxes["all"]] == [("Tax, 8%", exactly("36.00"))]
    assert taxes["none"] == ()


def test_an_unknown_price_is_not_counted_as_zero() -> None:
    """A part without a price leaves its tax and the total unknown."""
    lines = with_tax(
        [price_line(LineKind.PART, "part", None), labor_line("Labor", Decimal(1), shop())], shop()
    )
    assert [line.amount for line in lines] == [None, exactly("140.00"), None]
    assert total_price(lines) is None


def test_a_range_stays_a_range() -> None:
    """280 to 340 with 8% tax is 302.40 to 367.20."""
    lines = with_tax([price_line(LineKind.PART, "part", Money(Decimal(280), Decimal(340)))], shop())
    assert total_price(lines) == Money(Decimal("302.40"), Decimal("367.20"))


def test_the_average_cost_counts_one_comeback() -> None:
    """Worked example, own arithmetic: 182 + 0.15 x 182 = 209.30."""
    assert cost_with_comebacks(exactly("182"), Decimal("0.15")) == exactly("209.30")


@given(
    hours=st.decimals(0, 20, places=1), rate=AMOUNTS, low=AMOUNTS, more=AMOUNTS,
    percent=st.decimals(0, 30, places=2), base=st.sampled_from(["parts", "all", "none"]),
)  # fmt: skip
@settings(max_examples=100, deadline=None)
def test_a_total_is_the_sum_of_its_lines(hours, rate, low, more, percent, base) -> None:
    """To the cent, and at most half a cent a line from the exact sum.

    Reference: the same sum in exact fractions, not rounded.
    """
    here = shop(str(rate), str(percent), base)
    part_line = price_line(LineKind.PART, "part", Money(low, low + more))
    lines = with_tax([labor_line("Labor", hours, here), part_line], here)
    for side in ("low", "high"):
        amounts = [getattr(line.amount, side) for line in lines]
        assert getattr(total_price(lines), side) == sum(amounts)
        assert all(amount == amount.quantize(CENT) for amount in amounts)
        part = Fraction(low if side == "low" else low + more)
        work = Fraction(hours) * Fraction(rate)
        taxed = {"parts": part, "all": part + work, "none": Fraction(0)}[base]
        exact = work + part + taxed * Fraction(percent) / 100
        assert abs(Fraction(getattr(total_price(lines), side)) - exact) <= Fraction(len(lines), 200)
