"""Money to the cent: rounding, tax, totals, and what is not known."""

from decimal import Decimal
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from builder.model.shop import Shop
from builder.model.text import Text
from builder.model.tree import Money
from builder.plan.prices import (
    CENT,
    Kind,
    labour,
    priced,
    rounded,
    total,
    with_coming_back,
    with_tax,
)

AMOUNTS = st.decimals(0, 10_000, places=2)


def shop(rate: str = "140", tax: str = "8", base: str = "parts") -> Shop:
    """Make a shop that differs in its rate and its tax alone."""
    return Shop(Text("A shop"), Text("https://charts.example/"), Decimal(rate), Text("USD"),
                Decimal(tax), base)  # fmt: skip


def one(amount: str) -> Money:
    """Make a price that is no range."""
    return Money(Decimal(amount), Decimal(amount))


def test_half_a_cent_goes_up() -> None:
    """As a till rounds, not as a computer does: 0.125 is 0.13 and 0.135 is 0.14."""
    assert [str(rounded(Decimal(a))) for a in ("0.125", "0.135", "0.1349", "2")] == [
        "0.13", "0.14", "0.13", "2.00"]  # fmt: skip


def test_each_line_is_rounded_for_itself() -> None:
    """Three times a third of an hour at 100 are 99.99: what the customer adds up on the sheet."""
    lines = [labour("Labour", Decimal("0.3333"), shop("100")) for _ in range(3)]
    assert total(lines) == one("99.99")


def test_tax_is_on_parts_on_all_or_on_nothing() -> None:
    """140.00 of labour, 310.00 of parts, 8 per cent."""
    lines = [labour("Labour", Decimal(1), shop()), priced(Kind.PART, "part", one("310"))]
    taxes = {base: with_tax(lines, shop(base=base))[2:] for base in ("parts", "all", "none")}
    assert [(line.item, line.amount) for line in taxes["parts"]] == [
        ("Tax on parts, 8 %", one("24.80"))
    ]
    assert [(line.item, line.amount) for line in taxes["all"]] == [("Tax, 8 %", one("36.00"))]
    assert taxes["none"] == ()


def test_what_is_not_known_is_not_counted_as_nothing() -> None:
    """A part without a price leaves its tax and the total open."""
    lines = with_tax(
        [priced(Kind.PART, "part", None), labour("Labour", Decimal(1), shop())], shop()
    )
    assert [line.amount for line in lines] == [None, one("140.00"), None]
    assert total(lines) is None


def test_a_range_stays_a_range() -> None:
    """280 to 340 with 8 per cent of tax is 302.40 to 367.20."""
    lines = with_tax([priced(Kind.PART, "part", Money(Decimal(280), Decimal(340)))], shop())
    assert total(lines) == Money(Decimal("302.40"), Decimal("367.20"))


def test_the_cost_of_coming_back_counts_once_again() -> None:
    """Worked example, own arithmetic: 182 + 0.15 x 182 = 209.30."""
    assert with_coming_back(one("182"), Decimal("0.15")) == one("209.30")


@given(
    hours=st.decimals(0, 20, places=1), rate=AMOUNTS, low=AMOUNTS, more=AMOUNTS,
    percent=st.decimals(0, 30, places=2), base=st.sampled_from(["parts", "all", "none"]),
)  # fmt: skip
@settings(max_examples=100, deadline=None)
def test_a_total_is_the_sum_of_its_lines(hours, rate, low, more, percent, base) -> None:
    """To the cent, and no further from the exact sum than half a cent for each line.

    Reference: the same sum in exact fractions, not rounded.
    """
    here = shop(str(rate), str(percent), base)
    lines = with_tax(
        [labour("Labour", hours, here), priced(Kind.PART, "part", Money(low, low + more))], here
    )
    for side in ("low", "high"):
        amounts = [getattr(line.amount, side) for line in lines]
        assert getattr(total(lines), side) == sum(amounts)
        assert all(amount == amount.quantize(CENT) for amount in amounts)
        part = Fraction(low if side == "low" else low + more)
        work = Fraction(hours) * Fraction(rate)
        taxed = {"parts": part, "all": part + work, "none": Fraction(0)}[base]
        exact = work + part + taxed * Fraction(percent) / 100
        assert abs(Fraction(getattr(total(lines), side)) - exact) <= Fraction(len(lines), 200)
