"""The customer's sheet of a fix: what was found, what it means for driving, what can be done.

In: a tree, one of its fixes, the library, what a walk found if there was one. Out: the bytes of a
PDF, in words without trade slang. What was measured is on it only if it was measured on this job;
without a walk there are lines to write it on. Whether the vehicle may be driven is said once.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from reportlab.platypus import Flowable, KeepTogether, Table

from builder.model.ends import Money
from builder.model.library import Library
from builder.model.shop import Shop
from builder.model.tree import Tree
from builder.plan.estimate_options import (
    EstimateOption,
    cheapest_repair,
    declined,
    estimate_options,
)
from builder.plan.prices import PriceLine
from builder.plan.refused_options import LEAVE
from builder.prints.customer_prices import price_words, savings_words
from builder.prints.document import (
    blank_table,
    blank_to_fill,
    document,
    filled_in,
    heading,
    paragraph,
    paragraph_style,
    quiet_paragraph,
)
from builder.prints.drawing import INK, QUIET
from builder.prints.paper import PAPERS, Paper
from builder.prints.sheet import SAFETY, Foot
from builder.walk.diagnosis import Diagnosis, diagnosis_alone
from builder.walk.job_details import job_details
from builder.walk.measured import check_line
from builder.walk.story import LONGEST_COMPLAINT
from builder.wording.placeholders import in_plain_words
from builder.wording.sentences import capitalized
from builder.wording.value_text import amount_text, amounts_text, money_text
from builder.wording.vehicle_words import driving_text

TITLE = "What we found and what can be done"
NO_PROMISE = (
    "Nothing in our records says that driving with this fault is unsafe; that is no promise. "
    "If a warning light comes on or anything feels different, stop and call us."
)


def customer_sheet(
    tree: Tree, fix: str, library: Library, paper: str = "", walked: Diagnosis | None = None
) -> bytes:
    """Print what a customer decides on; `walked` is what a walk of this tree found.

    Raises KeyError if the tree has no step of that id, ValueError if the step is no fix.
    """
    found = walked or diagnosis_alone(tree, fix)
    options = estimate_options(in_plain_words(tree), fix, library, found.advice)
    sheet = PAPERS[paper or library.shop.paper]
    details = job_details(found.job, found.vehicle, library, found.day)
    content = _Sheet(found, options, details, library.shop, sheet)
    name = " ".join(filter(None, (str(library.shop.name), str(library.shop.phone or ""))))
    return document(
        sheet,
        f"What we found: {found.repair}",
        "Customer's sheet",
        lambda: list(_story(content)),
        Foot(TITLE, [f"{name}.", SAFETY], ""),
    )


@dataclass(frozen=True, slots=True)
class _Sheet:
    """What the sheet is about."""

    found: Diagnosis
    options: tuple[EstimateOption, ...]
    details: Mapping[str, str]
    shop: Shop
    paper: Paper


def _story(sheet: _Sheet) -> Iterator[Flowable]:
    shop = sheet.shop
    yield paragraph(str(shop.name), paragraph_style(18, heavy=True, below=2))
    if shop.phone:
        yield paragraph(f"Phone {shop.phone}", paragraph_style(12))
    customer = {"Customer": sheet.found.job.get("customer", "")}
    yield blank_table(filled_in({**customer, **sheet.details}), sheet.paper, 20)
    yield from _found(sheet.found)
    yield heading("What it means for driving")
    for reason in _driving(sheet):
        yield paragraph(reason, paragraph_style(12))
    yield heading("What can be done")
    for option in sheet.options:
        shown = (option, declined(shop)) if option.id == LEAVE and option.not_offered else (option,)
        yield KeepTogether([part for one in shown for part in _option(one, shop, sheet.paper)])
    if cheapest := cheapest_repair(sheet.options):
        total = money_text(cheapest.total, shop) if cheapest.total else ""
        words = f"Lowest price for a full repair: {cheapest.option}, {total}."
        yield paragraph(words, paragraph_style(12, heavy=True, above=8))
    yield paragraph(price_words(shop, sheet.options), paragraph_style(ink=QUIET, above=8))
    yield KeepTogether(
        [
            heading("Your choice"),
            paragraph("I have read this sheet and choose the option ticked."),
            blank_table(("Signature", "Name and date"), sheet.paper, 40),
        ]
    )


def _found(found: Diagnosis) -> Iterator[Flowable]:
    if found.complaint:
        yield heading("What you told us")
        yield paragraph(found.complaint[:LONGEST_COMPLAINT], paragraph_style(12))
    yield heading("What we found")
    lines = [
        found.tell,
        f"Cause: {found.cause}." if found.cause else "",
        f"Repair: {found.repair}." if found.repair else "",
    ]
    for line in filter(None, lines):
        yield paragraph(line, paragraph_style(12, below=3))
    if found.evidence or found.to_measure:
        yield heading("What we measured and saw")
    for check in found.evidence:
        yield paragraph(check_line(check), paragraph_style(12))
    for asked in found.to_measure:
        yield blank_to_fill(f"{asked}{'' if asked.endswith('?') else ':'}", 16)


def _driving(sheet: _Sheet) -> list[str]:
    """Return whether it may be driven; a tree without advice has what its records say."""
    advice = sheet.found.advice
    if advice:
        return [driving_text(advice.drive, advice.why)]
    reasons = [one.not_offered for one in sheet.options]
    unsafe = [one for one in reasons if "safe" in one or "home" in one]
    return [f"{reason}." for reason in dict.fromkeys(unsafe)] or [NO_PROMISE]


def _option(option: EstimateOption, shop: Shop, paper: Paper) -> Iterator[Flowable]:
    if option.not_offered:
        yield paragraph(f"Not offered: {option.option}", paragraph_style(12, heavy=True, above=6))
        yield quiet_paragraph(f"{option.not_offered.rstrip('.')}.")
        return
    yield paragraph(f"☐ {option.option}", paragraph_style(12, heavy=True, above=6))
    rows = [[paragraph(_item(line, shop)), _amount(line.amount, shop)] for line in option.lines]
    if len(rows) > 1:
        rows.append(
            [paragraph("Total", paragraph_style(heavy=True)), _amount(option.total, shop, True)]
        )
    elif not rows:
        rows.append([paragraph("No charge"), paragraph("")])
    yield _sum(rows, paper)
    if option.saves:
        yield quiet_paragraph(savings_words(option.saves, shop))
    if option.cost_with_comebacks:
        average = amounts_text(option.cost_with_comebacks, shop)
        yield quiet_paragraph(f"With the chance that it has to be done again: {average}.")
    if option.note:
        yield quiet_paragraph(option.note)


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
    return f"{capitalized(line.item)}, {line.hours} h at {amount_text(shop.labor_rate, shop)}"


def _amount(total: Money | None, shop: Shop, heavy: bool = False) -> Flowable:
    how = paragraph_style(heavy=heavy)
    how.alignment = 2  # to the right
    return paragraph(amounts_text(total, shop) if total else "not known yet", how)
