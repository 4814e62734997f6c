"""Parts and sum on the story: what was used, what the estimate held, what that leaves to pay."""

from dataclasses import replace
from decimal import Decimal

import pytest

from builder.model.ends import Money
from builder.model.shop import Shop
from builder.model.text import Text
from builder.plan.estimate_options import EstimateOption
from builder.plan.prices import LineKind, PriceLine, labor_line, price_line, total_price, with_tax
from builder.walk.complaint_lines import NEXT, REST
from builder.walk.estimate_lines import choice_lines
from builder.walk.job_details import BLANK
from builder.walk.parts_paid import part_lines, pay_lines
from builder.walk.used_parts import parts_used

SHOP = Shop(Text("A shop"), Text("https://charts.example/"), Decimal(140), Text("USD"), Decimal(8),
            "parts", Money(Decimal(115), Decimal(115)))  # fmt: skip


def options(*parts: PriceLine) -> list[EstimateOption]:
    """Return the option of a repair of 0.6 h, $84.00, with its parts."""
    lines = with_tax((labor_line("Labor", Decimal("0.6"), SHOP), *parts), SHOP)
    return [EstimateOption("fit-here", "We repair it", lines, total_price(lines))]


def part(low: int, high: int) -> PriceLine:
    """Return a hose of that price."""
    return price_line(LineKind.PART, "hose", Money(Decimal(low), Decimal(high)))


def test_a_part_that_was_used_is_one_line() -> None:
    """With blanks for what nobody typed of it; one of another name asks one question."""
    held = options(part(5, 40))
    lines = part_lines(held, "fit-here", "suction hose", True, SHOP)
    assert lines == [f"Suction hose, part number {BLANK}, $5.00 to $40.00 on the estimate"]
    lines = part_lines(held, "fit-here", "suction hose SH-2204 $12.50", True, SHOP)
    assert lines == ["Suction hose, part number SH-2204, $12.50 (estimate: $5.00 to $40.00)"]
    first, asks = part_lines(held, "fit-here", "pipe, part number P1, $9.00", True, SHOP)
    assert first == "Pipe, part number P1, $9.00"
    assert asks.startswith("On the estimate, hose, $5.00 to $40.00: ☐ not used, pipe instead  ☐ ")
    [line] = part_lines(options(), "fit-here", "suction hose", True, SHOP)
    assert line == f"Suction hose, part number {BLANK}, price {BLANK}"


@pytest.mark.parametrize(
    ("typed", "line"),
    [
        ("hose R-134a 26 oz, $12.00", f"Hose R-134a 26 oz, part number {BLANK}, $12.00"),
        ("hose, R-134A, 26 oz, $12.00", f"Hose, R-134A, 26 oz, part number {BLANK}, $12.00"),
        ("hose, 5 qt of 5W-30, $12.00", f"Hose, 5 qt of 5W-30, part number {BLANK}, $12.00"),
        (
            "hose SH-2204 short one, $12.00 used",
            "Hose, short one, used, part number SH-2204, $12.00",
        ),
        ("2 hoses, $6.00 each", f"2 hoses, $6.00 each, part number {BLANK}, price {BLANK}"),
    ],
)
def test_nothing_typed_of_a_part_is_lost(typed: str, line: str) -> None:
    """What is no clear part number or price stands behind the name, as it was typed."""
    (first, *_) = part_lines(options(), "fit-here", typed, True, SHOP)
    assert first == line


@pytest.mark.parametrize(
    ("typed", "parts"),
    [
        ("fan pigtail with terminals, part number FP-9, $22.00",
         [("fan pigtail with terminals", "FP-9", "22.00", "")]),
        ("alternator PN 4471-A $240, belt 6PK-1870 $35",
         [("alternator", "4471-A", "240", ""), ("belt", "6PK-1870", "35", "")]),
        ("terminal kit, $12, instead of the sealant", [("terminal kit", "", "12", "sealant")]),
        ("2 injectors, $80.00", [("2 injectors", "", None, "")]),  # of one, or of both?
        ("seal, $4.00 each", [("seal", "", None, "")]),
    ],
)  # fmt: skip
def test_what_a_tech_typed_is_taken_apart(
    typed: str, parts: list[tuple[str, str, str | None, str]]
) -> None:
    """Name, number, price; a price that may be of one or of several is none."""
    found = [
        (one.name, one.number, str(one.price) if one.price else None, one.instead_of)
        for one in parts_used(typed)
    ]
    assert found == parts


@pytest.mark.parametrize(
    ("chosen", "becomes", "declined"),
    [
        ("fit-here", "comes back if it gets worse",
         "second diagnosis, for “a squeak”, $150.00"),
        ("We repair it, $84.00", "new appointment", "nothing"),
    ],
)  # fmt: skip
def test_the_second_diagnosis_is_declined_too(chosen: str, becomes: str, declined: str) -> None:
    """Unless it is to come; the choice is known by its ID and in words."""
    shop = replace(SHOP, diagnosis_fee=Money(Decimal(150), Decimal(150)))
    job = {"chosen": chosen, REST: "a squeak", NEXT: becomes}
    text = ". ".join(choice_lines(options(), job, shop))
    assert text.startswith("Chosen: We repair it, $84.00. Declined: ")
    assert text.removeprefix("Chosen: We repair it, $84.00. Declined: ") == declined


@pytest.mark.parametrize(
    ("held", "own", "says"),
    [
        ([part(5, 40)], "", f"The range comes from: hose. To pay: {BLANK}"),
        ([part(5, 40)], "hose H-9912, $20.00", "To pay: $105.60"),
        ([part(5, 40)], "pipe, $20.00", "To pay: $105.60 without hose"),
        ([part(5, 40)], "fuel hose clamp, $20.00", "To pay: $105.60 without hose"),
        ([part(5, 40)], "none, cleaned", "To pay without those parts: $84.00"),
        ([part(40, 40)], "None", "To pay without those parts: $84.00"),
        ([part(40, 40)], "", ""),
        ([], "none", ""),
    ],
)
def test_the_sum_follows_from_the_parts(held: list[PriceLine], own: str, says: str) -> None:
    """Without the parts their price and its tax are gone: 84.00 of 89.40 to 127.20.

    With one of 20.00 and its tax of 8%: 84.00 + 20.00 + 1.60.
    """
    assert "".join(pay_lines(options(*held), "fit-here", own, SHOP)) == says
    lines = part_lines(options(*held), "fit-here", own, True, SHOP)
    is_left_over = bool(held) and own.lower().startswith("none")
    assert (
        any(line.startswith("On the estimate, not used: hose, $") for line in lines) is is_left_over
    )
