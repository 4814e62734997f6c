"""What can be done, on the customer's sheet: each option with its sum, or why it isn't offered.

In: the options of a fix, the shop, the paper. Out: flowables.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace

from reportlab.platypus import Flowable, Table

from builder.model.ends import Money
from builder.model.shop import Shop
from builder.plan.cheapest_repair import cheapest_repair
from builder.plan.estimate_options import EstimateOption, declined
from builder.plan.prices import PriceLine
from builder.plan.refused_options import LEAVE
from builder.prints.customer_prices import (
    advice_words,
    condition_words,
    price_words,
    savings_words,
    together_words,
)
from builder.prints.document import paragraph, paragraph_style, quiet_paragraph
from builder.prints.drawing import INK, QUIET
from builder.prints.paper import Paper
from builder.walk.complaint_lines import OF_FAULT, unchecked
from builder.walk.estimate_lines import chosen_option
from builder.wording.sentences import capitalized, uncapitalized
from builder.wording.value_text import amount_text, money_text

DONE = "The work is done already"
IN_PRICE = "This work was done as the test; this is its price."
OPEN, CHOSEN = "☐", "✓ Chosen:"
Spelled = Callable[[str], str]  # with abbreviations spelled out at their first use


@dataclass(frozen=True, slots=True)
class OptionSetting:
    """What all options of a sheet are set with; `chosen` is what the customer chose, if known."""

    shop: Shop
    paper: Paper
    spelled: Spelled
    chosen: str = ""

    def box(self, option: EstimateOption, every: Sequence[EstimateOption]) -> str:
        """Return what stands before an option: a box to tick, or the tick of the chosen one."""
        is_left = option.id == LEAVE and self.chosen.casefold().startswith((LEAVE, "no repair now"))
        return CHOSEN if is_left or chosen_option(every, self.chosen) is option else OPEN


def option_blocks(
    options: Sequence[EstimateOption], day: str, setting: OptionSetting
) -> list[list[Flowable]]:
    """Return what stays together of each option; the last has what holds for all prices, too."""
    shop = setting.shop
    blocks = []
    for option in options:
        is_unsafe = option.id == LEAVE and option.not_offered not in ("", DONE)
        shown = (option, declined(shop)) if is_unsafe else (option,)
        blocks.append(
            [part for one in shown for part in _option(one, setting, setting.box(one, options))]
        )
    prices = paragraph(price_words(shop, options, day), paragraph_style(ink=QUIET, above=5))
    return [*blocks[:-1], [*(blocks[-1] if blocks else []), *_cheapest(options, shop), prices]]


def with_rest_open(options: Sequence[EstimateOption], rest: str) -> list[EstimateOption]:
    """Return options where leaving it says nothing of what of the complaint isn't diagnosed."""
    return [
        replace(one, note=f"{OF_FAULT} {uncapitalized(one.note)} {unchecked(rest)}")
        if rest and one.id == LEAVE
        else one
        for one in options
    ]


def with_work_done(options: Sequence[EstimateOption]) -> list[EstimateOption]:
    """Return options of a repair that was done as a test: it is priced, and can't be left."""
    return [
        replace(one, not_offered=DONE, lines=(), note="")
        if one.id == LEAVE
        else replace(one, note=f"{one.note} {IN_PRICE}".strip())
        for one in options
    ]


def also_diagnosed(
    rest: str, options: Sequence[EstimateOption], setting: OptionSetting
) -> list[Flowable]:
    """Offer to find the cause of what of the complaint is left: another diagnosis, priced."""
    shop = setting.shop
    owed = declined(shop)
    option = replace(
        owed,
        option=f"In addition, find the cause of this: {rest}",
        lines=tuple(replace(one, name=f"Second {uncapitalized(one.name)}") for one in owed.lines),
        note="Its repair is quoted before it is done.",
    )
    both = (paragraph(one, paragraph_style()) for one in together_words(options, option, shop))
    return [*_option(option, setting, OPEN), *both]


def _cheapest(options: Sequence[EstimateOption], shop: Shop) -> Iterator[Flowable]:
    if cheapest := cheapest_repair(options):
        yield paragraph(
            advice_words(options, cheapest, shop), paragraph_style(12, heavy=True, above=5)
        )


def _option(option: EstimateOption, setting: OptionSetting, box: str) -> Iterator[Flowable]:
    shop, spelled = setting.shop, setting.spelled
    if option.not_offered:
        yield paragraph(f"Not offered: {option.option}", paragraph_style(12, heavy=True, above=4))
        yield quiet_paragraph(spelled(f"{option.not_offered.rstrip('.')}."))
        return
    yield paragraph(f"{box} {option.option}", paragraph_style(12, heavy=True, above=4))
    rows = [
        [paragraph(spelled(_item(line, shop))), _amount(line.amount, shop)] for line in option.lines
    ]
    if len(rows) > 1:
        rows.append(
            [paragraph("Total", paragraph_style(heavy=True)), _amount(option.total, shop, True)]
        )
    elif not rows:
        rows.append([paragraph("No charge"), paragraph("")])
    yield _sum(rows, setting.paper)
    if saved := savings_words(option, shop):
        yield quiet_paragraph(saved)
    if option.cost_with_comebacks:
        yield quiet_paragraph("This can fail. Then the next repair is paid on top.")
    if option.only_if:
        yield quiet_paragraph(spelled(condition_words(option, shop)))
    if option.note:
        yield quiet_paragraph(spelled(option.note))


def _sum(rows: list[list[Flowable]], paper: Paper) -> Table:
    made = Table(rows, colWidths=[paper.inner_width - 150, 150])
    total = [("LINEABOVE", (0, -1), (-1, -1), 0.6, INK)] if len(rows) > 1 else []
    made.setStyle([
        ("TOPPADDING", (0, 0), (-1, -1), 0),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 1),
        ("LEFTPADDING", (0, 0), (0, -1), 18),
        *total,
    ])  # fmt: skip
    return made


def _item(line: PriceLine, shop: Shop) -> str:
    if line.hours is None:
        return capitalized(line.item)
    return (
        f"{capitalized(line.item)}, {line.hours} h at {amount_text(shop.labor_rate, shop)} an hour"
    )


def _amount(total: Money | None, shop: Shop, heavy: bool = False) -> Flowable:
    how = paragraph_style(heavy=heavy)
    how.alignment = 2  # to the right
    return paragraph(money_text(total, shop) if total else "not known yet", how)
