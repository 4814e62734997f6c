"""The customer's sheet of a fix: what was found, what it means for safety, what can be done.

In: a tree, one of its fixes, the library. Out: the bytes of a PDF, in words without trade slang.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from reportlab.platypus import Flowable, KeepTogether, Table

from builder.model.ends import Fix, Money
from builder.model.library import Library
from builder.model.shop import Shop
from builder.model.tree import Tree
from builder.plan.estimate_options import EstimateOption, estimate_options
from builder.plan.prices import PriceLine
from builder.prints.document import (
    blank_table,
    document,
    heading,
    paragraph,
    paragraph_style,
    quiet_paragraph,
)
from builder.prints.drawing import INK, QUIET
from builder.prints.paper import PAPERS, Paper
from builder.prints.sheet import Foot, foot_lines
from builder.wording.placeholders import in_plain_words
from builder.wording.value_text import amount_text, amounts_text

JOB = ("Order number", "Vehicle number", "Odometer", "Date")
NO_PROMISE = (
    "Nothing in our records says that driving with this fault is unsafe; that is no promise. "
    "If a warning lamp comes on or anything feels different, stop and call us."
)
PRICES = (
    "Prices in {}. A range is given where the price is not fixed. "
    "Not offered means that we do not do it, for the reason given."
)


def customer_sheet(
    tree: Tree, fix: str, library: Library, paper: str = "", measured: Sequence[str] = ()
) -> bytes:
    """Print what a customer decides on; `measured` are readings taken, in words.

    Raises KeyError if the tree has no step of that id, ValueError if the step is no fix.
    """
    tree = in_plain_words(tree)
    body = tree.steps[fix].body
    if not isinstance(body, Fix):
        raise ValueError(f"{tree.id}: step {fix} is a {tree.steps[fix].kind}, not a fix")
    sheet = PAPERS[paper or library.shop.paper]
    text = str(tree.steps[fix].text)
    found = _Found(body, text, estimate_options(tree, fix, library), tuple(measured))
    foot = Foot("What we found and what can be done", foot_lines(tree, library), "")
    return document(
        sheet,
        f"What we found: {text}",
        f"Customer's sheet of {tree.id}#{fix}, {tree.revision}",
        lambda: list(_story(found, library.shop, sheet)),
        foot,
    )


@dataclass(frozen=True, slots=True)
class _Found:
    """What the sheet is about."""

    fix: Fix
    text: str
    offered: tuple[EstimateOption, ...]
    measured: tuple[str, ...]


def _story(found: _Found, shop: Shop, paper: Paper) -> Iterator[Flowable]:
    fix = found.fix
    yield paragraph(str(shop.name), paragraph_style(18, heavy=True, below=2))
    yield blank_table(JOB, paper)
    yield heading("What we found")
    if fix.tell:
        yield paragraph(str(fix.tell), paragraph_style(12, below=3))
    yield paragraph(f"Cause: {fix.cause}.", paragraph_style(12, below=3))
    yield paragraph(f"Repair: {found.text}.", paragraph_style(12, below=3))
    for one in found.measured:
        yield paragraph(f"Measured: {one}")
    yield heading("What it means for safety")
    for reason in _safety(found.offered):
        yield paragraph(reason, paragraph_style(12))
    yield heading("What can be done")
    for option in found.offered:
        yield KeepTogether(list(_option(option, shop, paper)))
    yield paragraph(PRICES.format(shop.currency), paragraph_style(ink=QUIET, above=8))
    yield KeepTogether(
        [
            heading("Your choice"),
            paragraph("I have read this sheet and choose the option ticked."),
            blank_table(("Signature", "Name and date"), paper, 40),
        ]
    )


def _safety(offered: Sequence[EstimateOption]) -> list[str]:
    """Return why an option is not safe, or that nobody knows of a reason."""
    reasons = [o.not_offered for o in offered if "safe" in o.not_offered or "home" in o.not_offered]
    return [f"{reason}." for reason in dict.fromkeys(reasons)] or [NO_PROMISE]


def _option(option: EstimateOption, shop: Shop, paper: Paper) -> Iterator[Flowable]:
    if option.not_offered:
        yield paragraph(f"Not offered: {option.option}", paragraph_style(12, heavy=True, above=6))
        yield quiet_paragraph(f"{option.not_offered}.")
        return
    yield paragraph(f"☐ {option.option}", paragraph_style(12, heavy=True, above=6))
    rows = [[paragraph(_item(line, shop)), _amount(line.amount, shop)] for line in option.lines]
    if rows:
        rows.append(
            [paragraph("Together", paragraph_style(heavy=True)), _amount(option.total, shop, True)]
        )
    else:
        rows.append([paragraph("No charge"), paragraph("")])
    yield _sum(rows, paper)
    if option.cost_with_comebacks:
        average = amounts_text(option.cost_with_comebacks, shop)
        yield quiet_paragraph(f"With the chance that it has to be done again: {average}.")
    if option.note:
        yield quiet_paragraph(option.note)


def _sum(rows: list[list[Flowable]], paper: Paper) -> Table:
    made = Table(rows, colWidths=[paper.inner_width - 150, 150])
    made.setStyle([
        ("TOPPADDING", (0, 0), (-1, -1), 0),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 1),
        ("LEFTPADDING", (0, 0), (0, -1), 18),
        ("LINEABOVE", (0, -1), (-1, -1), 0.6, INK),
    ])  # fmt: skip
    return made


def _item(line: PriceLine, shop: Shop) -> str:
    if line.hours is None:
        return line.item
    return f"{line.item}, {line.hours} h at {amount_text(shop.labor_rate, shop)}"


def _amount(total: Money | None, shop: Shop, heavy: bool = False) -> Flowable:
    how = paragraph_style(heavy=heavy)
    how.alignment = 2  # to the right
    return paragraph(amounts_text(total, shop) if total else "not known yet", how)
