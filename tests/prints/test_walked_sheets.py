"""The customer's sheet of every fix, held against the record of the walk and against the tree.

A plain reading of the printed page, of the record's JSON and of the tree: nothing here asks the
code that wrote the sheet.
"""

import re
from dataclasses import replace
from functools import cache
from io import BytesIO
from itertools import takewhile
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from builder.model.ends import Drive, Fix
from builder.prints.customer import customer_sheet
from builder.prints.repair_order import story_sheet
from builder.walk.diagnosis import Diagnosis, diagnosis_of
from builder.walk.record import record_of
from builder.walk.story import story_of
from tests.walk.drilled import DrilledFix, drilled_fixes, drilled_shop

from .printed_words import words

TESTS = Path(__file__).parents[1]
SHOPS = [TESTS / "samples", TESTS / "shop"]
ADVICE = {Drive.YES: "Safe to drive.", Drive.WITH_CARE: "Drive with care.",
          Drive.NO: "Don't drive it."}  # fmt: skip
HEADINGS = ("What you told us", "What we found", "What we measured and saw",
            "What it means for driving", "What can be done", "Your choice")  # fmt: skip


def section(text: str, name: str) -> str:
    """Return what stands under a heading; "" where there is none."""
    text = text[text.index("Date") :]  # the foot names the sheet before
    _, there, rest = text.partition(f" {name} ")
    ends = [at for other in HEADINGS if (at := rest.find(f" {other} ")) >= 0]
    return rest[: min(ends, default=len(rest))] if there else ""


TREES = [
    pytest.param(folder, f"{path.parent.name}/{path.stem}")
    for folder in SHOPS
    for path in sorted((folder / "trees").glob("*/*.yml"))
]


def jobs_of(folder: Path, tree: str) -> list[DrilledFix]:
    """Return the walks to every fix of a tree."""
    return [job for job in drilled_fixes(folder) if job.tree.id == tree]


def sheet_of(folder: Path, job: DrilledFix) -> str:
    """Print the sheet of a walk and read it."""
    return sheet_of_fix(folder, job.tree.id, job.fix)


@cache
def sheet_of_fix(folder: Path, tree: str, fix: str) -> str:
    """Print the sheet of the walk to a fix, once for all tests."""
    (job,) = (one for one in jobs_of(folder, tree) if one.fix == fix)
    shop = drilled_shop(folder)
    found = diagnosis_of(shop.tables, job.state, shop.library)
    assert isinstance(found, Diagnosis)
    return words(customer_sheet(job.tree, job.fix, shop.library, "", found))


def before_the_fix(record: dict[str, Any], fix: str) -> list[dict[str, Any]]:
    """Return the recorded steps before the repair."""
    steps: list[dict[str, Any]] = record["steps"]
    return steps[
        : next(n for n, one in enumerate(steps) if (one["step"], one["kind"]) == (fix, "fix"))
    ]


def deciding(before: list[dict[str, Any]], check: dict[str, Any]) -> list[dict[str, Any]]:
    """Return the last step with a reading of the procedure that a check ran."""
    at = next(at for at, one in enumerate(before) if one is check)
    run = [*takewhile(lambda one: one["in"].startswith("procedures/"), reversed(before[:at]))]
    return [one for one in run if one["readings"]][:1]


def is_out_of_limit(text: str, value: str) -> bool:
    """Whether a printed reading misses what the sheet itself says it should be."""
    match = re.search(rf"(?<![\d.]){re.escape(value)} \S+ \(should be ([^)]+)\)", text)
    if match is None:
        return False
    low, high = (re.findall(r"-?[\d.]+", match[1]) * 2)[:2]
    is_low = "or less" not in match[1] and float(value) < float(low)
    return is_low or ("or more" not in match[1] and float(value) > float(high))


def values(steps: list[dict[str, Any]]) -> set[str]:
    """Return the recorded readings with a decimal point: those can't be met by chance."""
    read = (one["value"] for step in steps for one in step["readings"].values())
    return {value for value in read if re.fullmatch(r"\d+\.\d{2,}", value)}


@pytest.mark.parametrize(("folder", "tree"), TREES)
def test_only_evidence_of_this_path_is_on_the_sheet(folder: Path, tree: str) -> None:
    """The convicting check and `proved_by` are there with their readings.

    To a check belongs the last reading of the procedure that it ran. Any other reading that is
    there is out of its limits, or of a check that a test of the repair does again.
    """
    for job in jobs_of(folder, tree):
        record, fix = record_of(job.state), job.tree.steps[job.fix].body
        assert isinstance(fix, Fix)
        before = before_the_fix(record, job.fix)
        proofs = {str(proof.step) for proof in fix.proved_by}
        of_tree = [one for one in before if one["in"] == job.tree.id and one["kind"] == "check"]
        last = {one["step"]: one for one in of_tree}
        checks = [last[name] for name in proofs | {of_tree[-1]["step"]} if name in last]
        wanted = [one for check in checks for one in (check, *deciding(before, check))]
        text = sheet_of(folder, job)
        measured = section(text, "What we measured and saw")
        for value in values(wanted):
            assert value in measured
        tests = {str(one.text) for one in fix.verify}
        again = [run for check in of_tree if check["step"] in tests
                 for run in (check, *deciding(before, check))]  # fmt: skip
        for value in values(record["steps"]) - values(wanted) - values(again):
            if re.search(rf"(?<![\d.]){re.escape(value)}(?![\d])", text):
                assert is_out_of_limit(measured, value)


@pytest.mark.parametrize(("folder", "tree"), TREES)
def test_driving_is_said_once_and_decides_what_is_left(folder: Path, tree: str) -> None:
    """One advice, that of the end or of the head; left as it is only where it may be driven."""
    for job in jobs_of(folder, tree):
        fix = job.tree.steps[job.fix].body
        assert isinstance(fix, Fix)
        drive = fix.drive or job.tree.drive
        text = sheet_of(folder, job)
        assert drive
        is_done = "This work was done as the test" in text
        assert not is_done or str(job.tree.steps[job.fix].note).startswith("Already done")
        before = "As it came in: " if is_done else ""
        advice = {words: before + (words[0].lower() + words[1:] if before else words)
                  for words in ADVICE.values()}  # fmt: skip
        assert [words for words, said in advice.items() if said in text] == [ADVICE[drive]]
        assert text.count(advice[ADVICE[drive]]) == 1
        is_offered = drive is not Drive.NO and not is_done
        assert ("☐ Leave it as it is" in text) is is_offered
        assert ("Not offered: Leave it as it is" in text) is not is_offered
        if drive is not Drive.NO:
            assert "Not safe to drive as it is" not in text


@pytest.mark.parametrize(("folder", "tree"), TREES)
def test_the_sheet_is_for_a_customer(folder: Path, tree: str) -> None:
    """No revision, no ID, no unfilled quote, a line to sign; at most two pages."""
    for job in jobs_of(folder, tree):
        shop = drilled_shop(folder)
        pages = PdfReader(BytesIO(customer_sheet(job.tree, job.fix, shop.library))).pages
        assert len(pages) <= 2
        text = sheet_of(folder, job)
        assert job.tree.revision not in text
        assert not re.search(r"<[\w.-]+>", text)
        assert str(shop.library.shop.name) in text
        assert "Signature" in text
        assert "it does it again" in section(text, "What you told us")


@pytest.mark.parametrize(("folder", "tree"), TREES)
def test_without_a_walk_nothing_is_claimed(folder: Path, tree: str) -> None:
    """What would have been measured has a blank beside it; a sentence that quotes is left out."""
    for job in jobs_of(folder, tree):
        shop = drilled_shop(folder)
        text = words(customer_sheet(job.tree, job.fix, shop.library))
        assert not re.search(r"<[\w.-]+>", text)
        assert not re.search(
            r"\d (?:V|A|Ω|mm|psi|kPa)\b", section(text, "What we measured and saw")
        )
        fix = job.tree.steps[job.fix].body
        assert isinstance(fix, Fix)
        for sentence in re.split(r"(?<=[.!?])\s+", str(fix.tell or "")):
            assert (sentence in text) is ("<" not in sentence) or "<module>" in sentence


@pytest.mark.parametrize(("folder", "tree"), TREES)
def test_a_story_fits_on_two_pages(folder: Path, tree: str) -> None:
    """It has every part of a write-up, and marks what was out of its limits."""
    for job in jobs_of(folder, tree):
        shop = drilled_shop(folder)
        story = story_of(shop.tables, job.state, shop.library)
        pdf = story_sheet(job.tree, shop.library, story)
        assert len(PdfReader(BytesIO(pdf)).pages) <= 2
        text = words(pdf)
        for part in ("Complaint", "Cause", "Correction", "Verification", "Time"):
            assert part in text


def test_most_fixes_of_both_shops_were_walked_to() -> None:
    """The look sees enough: every tree with a fix is there."""
    assert len(drilled_fixes(SHOPS[0])) >= 50
    assert len(drilled_fixes(SHOPS[1])) >= 25


def test_after_a_handoff_the_most_severe_advice_holds() -> None:
    """A tree that says `no` handed off to one that says `yes`: the sheet says `no`, once."""
    folder = SHOPS[0]
    shop = drilled_shop(folder)
    job = next(one for one in drilled_fixes(folder) if one.tree.id == "charging/lamp-on"
               and one.fix == "inside-fix")  # fmt: skip
    soft = next(one for one in drilled_fixes(folder) if one.tree.id == "brakes/soft-pedal")
    handed = replace(job.state, left=soft.state.frames)
    found = diagnosis_of(shop.tables, handed, shop.library)
    assert isinstance(found, Diagnosis)
    text = words(customer_sheet(job.tree, job.fix, shop.library, "", found))
    assert "Don't drive it. The brakes may not hold." in text
    assert "Safe to drive" not in text
    assert "Not offered: Leave it as it is" in text
