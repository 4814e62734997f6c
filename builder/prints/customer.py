"""The customer's sheet of a fix: what was found, what it means for driving, what can be done.

In: a tree, one of its fixes, the library, what a walk found if there was one. Out: the bytes of a
PDF, in words without trade slang. What was measured is on it only if it was measured on this job;
without a walk there are lines to write it on. Whether the vehicle may be driven is said once.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from reportlab.platypus import Flowable, KeepTogether

from builder.model.ends import Drive
from builder.model.library import Library
from builder.model.shop import Shop
from builder.model.tree import Tree
from builder.plan.estimate_options import EstimateOption, estimate_options
from builder.prints.customer_findings import seen_parts
from builder.prints.customer_options import (
    OptionSetting,
    Spelled,
    also_diagnosed,
    option_blocks,
    with_rest_open,
    with_work_done,
)
from builder.prints.document import (
    DocumentNames,
    blank_table,
    blank_to_fill,
    document,
    filled_in,
    heading,
    paragraph,
    paragraph_style,
)
from builder.prints.paper import PAPERS, Paper
from builder.prints.sheet import SAFETY, Foot
from builder.walk.cause_lines import PLACE_LABEL, PLACES, is_repair_open, place_beside
from builder.walk.complaint_lines import (
    NEXT,
    OF_FAULT,
    REST,
    complaint_lines,
    open_complaint,
    unchecked,
    unexplained_blank,
)
from builder.walk.diagnosis import Diagnosis, diagnosis_alone
from builder.walk.estimate_lines import with_known_parts
from builder.walk.job_details import job_details, job_line
from builder.walk.story import LONGEST_COMPLAINT
from builder.wording.abbreviations import spelled_at_first_use
from builder.wording.drive_condition import came_in_line, driving_lines
from builder.wording.past_tense import past_tense
from builder.wording.placeholders import in_plain_words
from builder.wording.sentences import uncapitalized
from builder.wording.several_places import place_named

TITLE = "What we found and what can be done"
NO_PROMISE = (
    "Nothing in our records says that driving with this fault is unsafe; that is no promise. "
    "If a warning light comes on or anything feels different, stop and call us."
)
AS_TEST = "This work is done: it was the test that found the cause."
VERIFIED_NOW = "Now, with this work done: it passed its tests."
NOT_VERIFIED = "Now, with this work done: not verified yet. Until it is, don't drive it."


def customer_sheet(
    tree: Tree, fix: str, library: Library, paper: str = "", walked: Diagnosis | None = None
) -> bytes:
    """Print what a customer decides on; `walked` is what a walk of this tree found.

    Raises KeyError if the tree has no step of that id, ValueError if the step is no fix.
    """
    found = walked or diagnosis_alone(tree, fix)
    every = estimate_options(in_plain_words(tree), fix, library, found.advice)
    options = with_known_parts(every, found.known)
    sheet = PAPERS[paper or library.shop.paper]
    details = job_details(found.job, found.vehicle, library, found.day)
    spelled = spelled_at_first_use(library.glossary)
    content = _Sheet(found, options, details, library.shop, sheet, spelled)
    name = " ".join(filter(None, (str(library.shop.name), str(library.shop.phone or ""))))
    head = job_line(library.shop, details)
    return document(
        sheet,
        DocumentNames(f"What we found: {found.repair}", "Customer's sheet", head),
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
    spelled: Spelled


def _story(sheet: _Sheet) -> Iterator[Flowable]:
    shop = sheet.shop
    yield paragraph(str(shop.name), paragraph_style(18, heavy=True, below=2))
    customer = {"Customer": sheet.found.job.get("customer", "")}
    phone = {"Our phone": str(shop.phone)} if shop.phone else {}
    yield blank_table(filled_in({**customer, **sheet.details, **phone}), sheet.paper, 18)
    yield from _found(sheet.found, sheet.spelled)
    yield heading("What it means for driving")
    for reason in _driving(sheet):
        yield paragraph(sheet.spelled(reason), paragraph_style(12))
    yield heading("What can be done")
    rest = open_complaint(sheet.found.own_words)
    setting = OptionSetting(shop, sheet.paper, sheet.spelled, chosen_words(sheet.found))
    *options, last = option_blocks(_offered(sheet, rest), sheet.found.day, setting)
    more = also_diagnosed(rest, sheet.options, setting) if rest else []
    own = sheet.found.own_words.get("declined") or sheet.found.job.get("declined", "")
    if own and own not in [one.option for one in sheet.options]:
        more = [*more, paragraph(f"Declined: {own}.", paragraph_style(12, heavy=True, above=4))]
    yield from map(KeepTogether, options)
    yield KeepTogether(  # nobody signs a page that has nothing to choose
        [
            *more,
            *last,
            heading("Your choice"),
            paragraph("I have read this sheet and choose what is ticked."),
            blank_table(("Signature", "Name and date"), sheet.paper, 32),
        ]
    )


def _offered(sheet: _Sheet, rest: str) -> Sequence[EstimateOption]:
    """Return the options as they are now: work that is done can't be left."""
    every = with_work_done(sheet.options) if sheet.found.done_as_test else sheet.options
    return with_rest_open(every, rest)


def _as_chosen(found: Diagnosis) -> tuple[Diagnosis, str]:
    """Return what was found, and the label of its repair.

    What the tech wrote of it tells what was done. Nobody signs that: before a choice is on record,
    the tree's own words propose it.
    """
    is_done = found.is_done and bool(chosen_words(found))
    if is_done and not is_repair_open(found):
        words = found.repair if "repair" in found.own_words else past_tense(found.repair)
        return replace(found, repair=words.removeprefix("Done: ")), "Repair done"
    place = found.place or place_named(found.own_words.get("repair", ""))
    return replace(found, repair=found.proposed or found.repair, place=place), "Repair"


def _after_label(label: str, found: Diagnosis) -> str:
    return uncapitalized(found.repair) if label == "Repair done" else found.repair


def chosen_words(found: Diagnosis) -> str:
    """Return what the customer chose, as it is on record."""
    return found.own_words.get("chosen", "") or found.job.get("chosen", "")


def _found(walked: Diagnosis, spelled: Spelled) -> Iterator[Flowable]:
    found, label = _as_chosen(walked)
    if found.complaint:
        yield heading("What you told us")
        yield paragraph(found.complaint[:LONGEST_COMPLAINT], paragraph_style(12))
        yield from _unexplained(found)
    yield heading("What we found")
    codes = "Trouble codes, before this work" if found.done_as_test else "Trouble codes"
    lines = [
        _cause(found),
        found.tell,
        f"{label}: {_after_label(label, found)}." if found.repair else "",
        AS_TEST if found.done_as_test else "",
        f"{PLACE_LABEL}: {place}." if (place := place_beside(found)) else "",
        f"{codes}: {'; '.join(found.codes)}." if found.codes else "",
    ]
    for line in filter(None, lines):
        yield paragraph(spelled(line), paragraph_style(12, below=3))
    if found.needs_place:
        yield blank_to_fill(f"{PLACE_LABEL} ({PLACES}):", 16)
    yield from seen_parts(found, spelled)


def _cause(found: Diagnosis) -> str:
    """Tell the cause, as no more than likely where something it rests on wasn't checked."""
    if not found.cause:
        return ""
    if found.unproved:
        return f"Likely cause, not all of it was checked on this job: {found.cause}."
    return f"Cause: {found.cause}."


def _unexplained(found: Diagnosis) -> Iterator[Flowable]:
    """Say how each part of the complaint stands, or leave it to a pen."""
    own = found.own_words
    for text in complaint_lines(found.complaint, found.handed_off, own, is_closed=NEXT in own):
        yield paragraph(text, paragraph_style(12, above=3))
    if blank := unexplained_blank(found.complaint, found.handed_off, own.get(REST, "")):
        yield blank_to_fill(blank, 40)


def _driving(sheet: _Sheet) -> list[str]:
    """Return whether it may be driven; a tree without advice has what its records say.

    Where a part of the complaint is open, that holds for the fault that was found, and nobody can
    say it of the rest.
    """
    rest = open_complaint(sheet.found.own_words)
    lines = _advice_lines(sheet)
    if not rest:
        return lines
    of_fault = [f"{OF_FAULT} {uncapitalized(lines[0])}"] if len(lines) == 1 else [OF_FAULT, *lines]
    return [*of_fault, unchecked(rest)]


def _advice_lines(sheet: _Sheet) -> list[str]:
    advice = sheet.found.advice
    if advice and sheet.found.done_as_test and advice.drive is not Drive.YES:
        now = VERIFIED_NOW if sheet.found.verified else NOT_VERIFIED
        return [came_in_line(advice.drive, advice.why), now]
    if advice and sheet.found.is_done and chosen_words(sheet.found):
        return [came_in_line(advice.drive, advice.why)]
    if advice:
        return driving_lines(advice.drive, advice.why)
    reasons = [one.not_offered for one in sheet.options]
    unsafe = [one for one in reasons if "safe" in one or "home" in one]
    return [f"{reason}." for reason in dict.fromkeys(unsafe)] or [NO_PROMISE]
