"""Parts and sum on the story: what was used, what the estimate held, what that leaves to pay."""

from decimal import Decimal

import pytest

from builder.model.ends import Money
from builder.model.shop import Shop
from builder.model.text import Text
from builder.plan.estimate_options import EstimateOption
from builder.plan.prices import LineKind, PriceLine, labor_line, price_line, total_price, with_tax
from builder.walk.estimate_lines import part_lines, pay_lines
from builder.walk.job_details import BLANK

SHOP = Shop(Text("A shop"), Text("https://charts.example/"), Decimal(140), Text("USD"), Decimal(8),
            "parts", Money(Decimal(115), Decimal(115)))  # fmt: skip


def options(*parts: PriceLine) -> list[EstimateOption]:
    """Return the option of a repair of 0.6 h, $84.00, with its parts."""
    lines = with_tax((labor_line("Labor", Decimal("0.6"), SHOP), *parts), SHOP)
    return [EstimateOption("fit-here", "We repair it", lines, total_price(lines))]


def part(low: int, high: int) -> PriceLine:
    """Return a hose of that price."""
    return price_line(LineKind.PART, "hose", Money(Decimal(low), Decimal(high)))


def test_own_words_keep_the_price_and_the_number_of_the_part() -> None:
    """What was used stands first; what the estimate didn't hold has a blank for its price."""
    lines = part_lines(options(part(5, 40)), "fit-here", "suction hose", True, SHOP)
    assert lines == ["Used: suction hose",
                     f"Hose, $5.00 to $40.00 on the estimate, part number {BLANK}"]  # fmt: skip
    [line] = part_lines(options(), "fit-here", "suction hose", True, SHOP)
    assert line == f"Suction hose, price {BLANK}, part number {BLANK}"


@pytest.mark.parametrize(
    ("held", "own", "says"),
    [
        ([part(5, 40)], "", f"The range comes from: hose. To pay: {BLANK}"),
        ([part(5, 40)], "none, cleaned", "To pay without those parts: $84.00"),
        ([part(40, 40)], "None", "To pay without those parts: $84.00"),
        ([part(40, 40)], "", ""),
        ([], "none", ""),
    ],
)
def test_the_sum_follows_from_the_parts(held: list[PriceLine], own: str, says: str) -> None:
    """Without the parts their price and its tax are gone: 84.00 of 89.40 to 127.20."""
    assert "".join(pay_lines(options(*held), "fit-here", own, SHOP)) == says
    lines = part_lines(options(*held), "fit-here", own, True, SHOP)
    is_left_over = bool(held) and own.lower().startswith("none")
    assert (
        any(line.startswith("On the estimate, not used: hose, $") for line in lines) is is_left_over
    )
