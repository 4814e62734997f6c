"""What the story says of the estimate: hours, parts, what was chosen and declined.

In: the options of a fix, what the record has of the job. Out: text and lines; blanks for a pen
where nobody recorded it.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace

from builder.model.shop import Shop
from builder.plan.estimate_options import EstimateOption
from builder.plan.prices import LineKind, PriceLine, total_price, with_tax
from builder.plan.refused_options import FIT_HERE, LEAVE
from builder.walk.job_details import BLANK
from builder.wording.one_of_several import narrowed_name
from builder.wording.sentences import capitalized, joined
from builder.wording.value_text import money_text

NOTHING_NOW = "No repair now"  # instead of leaving it, where it isn't safe
_NONE_USED = re.compile(r"(?:none|nothing|no parts?)\b", re.IGNORECASE)
LINE = 90  # characters that are sure to stand in one line


def hours_text(options: Sequence[EstimateOption]) -> str:
    """Return the hours of the repair as estimated; "" where they aren't known."""
    here = next((one for one in options if one.id == FIT_HERE), None)
    hours = [line.hours for line in here.lines if line.hours is not None] if here else []
    return f"{sum(hours):f}" if hours else ""


def with_known_parts(
    options: Sequence[EstimateOption], known: Sequence[str]
) -> tuple[EstimateOption, ...]:
    """Return options in which a part that may be one of several is named as the one it was."""
    return tuple(
        replace(
            option,
            lines=tuple(
                replace(line, name=narrowed_name(line.name, known))
                if line.kind is LineKind.PART
                else line
                for line in option.lines
            ),
        )
        for option in options
    )


def part_lines(
    options: Sequence[EstimateOption], chosen: str, own: str, asks_which: bool, shop: Shop
) -> list[str]:
    """Return the parts of an option, beside what the tech wrote of them.

    `asks_which`: of a part that may be one of several, nothing else on the paper asks for it.
    """
    option = next((one for one in options if one.id == chosen), None)
    if option is None:
        return [capitalized(own)] if own else []
    parts = [line for line in option.lines if line.kind is LineKind.PART]
    if _NONE_USED.match(own):
        held = "; ".join(
            f"{one.name}, {money_text(one.amount, shop)}" for one in parts if one.amount
        )
        return [f"{capitalized(own)}.", *([f"On the estimate, not used: {held}."] if held else [])]
    if own and not parts:
        return [f"{capitalized(own)}, price {BLANK}, part number {BLANK}"]
    lines = [_part_line(part, asks_which and not own, shop) for part in parts] or ["None."]
    return [f"Used: {own}", *lines] if own else lines


def _part_line(part: PriceLine, asks_which: bool, shop: Shop) -> str:
    """Write a part with its price, and blanks for its number and for which it was of several."""
    which = f", which: {BLANK}" if asks_which and " or " in part.name else ""
    installed = f" (only if {part.only_if}), installed: {BLANK}" if part.only_if else ""
    price = f", {money_text(part.amount, shop)} on the estimate" if part.amount else ""
    number = "part numbers" if " and " in part.name else "part number"
    return f"{capitalized(part.name)}{price}{installed}{which}, {number} {BLANK}"


def choice_lines(
    options: Sequence[EstimateOption], job: Mapping[str, str], shop: Shop
) -> list[str]:
    """Return what the customer chose and turned down; blanks where nobody recorded it."""
    if not options:
        return []
    chosen, own = job.get("chosen", ""), job.get("declined")
    offered = [one for one in options if not one.not_offered]
    chosen = next((one.id for one in offered if chosen in (one.id, one.option)), chosen)
    names = [_with_total(one, shop) for one in offered if one.id == chosen]
    names = names or ([chosen] if chosen else [])  # in words of one's own
    others = [NOTHING_NOW if one.not_offered else one.option for one in options
              if one.id != chosen and (one in offered or one.id == LEAVE)]  # fmt: skip
    turned_down = others if names and names != [chosen] else []
    declined = "; ".join([*turned_down, *([own] if own else [])])
    if not names and not declined:
        return [f"Chosen: {BLANK * 2} declined: {BLANK * 2}"]
    lines = [f"Chosen: {(names or [BLANK * 2])[0]}", f"Declined: {declined or BLANK * 2}"]
    return [". ".join(lines)] if sum(map(len, lines)) <= LINE else lines


def pay_lines(
    options: Sequence[EstimateOption], chosen: str, own_parts: str, shop: Shop
) -> list[str]:
    """Return what is to be paid where it isn't the estimate: without parts, or out of a range."""
    option = next((one for one in options if chosen in (one.id, one.option)), None)
    if option is None or option.total is None:
        return []
    taxed = [line for line in option.lines if line.kind is not LineKind.TAX]
    rest = [line for line in taxed if line.kind is not LineKind.PART]
    if _NONE_USED.match(own_parts) and len(rest) < len(taxed):
        left = total_price(with_tax(rest, shop))
        return [f"To pay without those parts: {money_text(left, shop)}"] if left else []
    if option.total.low == option.total.high:
        return []
    open_ = [line.name for line in taxed if line.amount and line.amount.low != line.amount.high]
    return [f"The range comes from: {joined(open_)}. To pay: {BLANK}"]


def _with_total(option: EstimateOption, shop: Shop) -> str:
    total = f", {money_text(option.total, shop)}" if option.total else ""
    return f"{option.option}{total}"
