"""A complaint of several parts: each is on both papers, as explained, as left, or for a pen."""

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

import pytest

from builder.prints.customer import customer_sheet
from builder.walk.complaint_lines import ALL_OF_IT, after_repair_text, has_several_parts
from builder.walk.diagnosis import Diagnosis, diagnosis_of
from builder.walk.events import WriteUp
from builder.walk.job_state import JobState
from builder.walk.reduce import reduce_event
from builder.walk.story import VERIFIED, story_of
from tests.prints.printed_words import words
from tests.walk.drilled import drilled_fix, drilled_shop

SAMPLES = Path(__file__).parents[1] / "samples"
TREE, FIX = "charging/lamp-on", "cable-fix"
SHAKE = "Battery light is on, and it shakes when braking"


def papers(complaint: str, own: Mapping[str, str]) -> tuple[str, str, str]:
    """Return the complaint and the verification of the story, and the customer's sheet."""
    shop, job = drilled_shop(SAMPLES), drilled_fix(SAMPLES, TREE, FIX)
    assert job
    state = replace(job.state, complaint=complaint)
    for name, text in own.items():
        following = reduce_event(shop.tables, state, WriteUp(name=name, text=text))
        assert isinstance(following, JobState)
        state = following
    story = dict(story_of(shop.tables, state, shop.library).sections)
    found = diagnosis_of(shop.tables, state, shop.library)
    assert isinstance(found, Diagnosis)
    sheet = words(customer_sheet(shop.trees[TREE], FIX, shop.library, "", found))
    return " ".join(story["Complaint"]), story[VERIFIED][-1], sheet


@pytest.mark.parametrize(
    ("complaint", "handed_off", "several"),
    [
        (SHAKE, False, True),
        ("Heater is cold; also a rattle", False, True),
        ("ABS light on after a bump", False, False),
        ("ABS light on after a bump", True, True),
        ("", True, False),
    ],
)
def test_what_seems_to_have_several_parts(complaint: str, handed_off: bool, several: bool) -> None:
    """By its words, or because it led on to another tree."""
    assert has_several_parts(complaint, handed_off) is several


def test_nobody_wrote_of_it_so_a_pen_does() -> None:
    """Both papers have a line for it; a complaint of one part has none."""
    complaint, after, sheet = papers(SHAKE, {})
    for text in (complaint, sheet):
        assert "Part of the complaint that this cause doesn't explain (or none):" in text
    assert after.startswith("Complaint gone, every part of it: ____")
    complaint, after, sheet = papers("Battery light is on", {})
    assert "doesn't explain" not in complaint + sheet
    assert after.startswith("Complaint gone: ____")


def test_what_the_tech_left_open_is_on_both_papers() -> None:
    """Not diagnosed yet, in so many words; afterward, how it is."""
    complaint, after, sheet = papers(
        SHAKE, {"complaint": "the shake", "after": "light off, shake is left"}
    )
    for text in (complaint, sheet):
        assert "not explained by this cause and not diagnosed yet: the shake." in text
    assert after == "Complaint and DTCs after the repair: light off, shake is left."


@pytest.mark.parametrize("has_codes", [False, True])
def test_what_is_on_record_is_not_asked_for(has_codes: bool) -> None:
    """DTCs that were read after the repair leave no blank."""
    text = after_repair_text("Battery light is on", False, "", has_codes)
    assert text.startswith("Complaint gone: ____")
    assert ("DTCs after the repair: ____" in text) is not has_codes


def test_a_cause_that_explains_everything_says_so() -> None:
    """`none` is an answer: no part of the complaint is forgotten."""
    complaint, _, sheet = papers(SHAKE, {"complaint": "none"})
    assert complaint == f"{SHAKE} {ALL_OF_IT}"
    assert ALL_OF_IT in sheet
    assert "doesn't explain" not in sheet


def test_damage_that_the_fault_did_is_not_denied() -> None:
    """It is part of the complaint, and of the cause; both papers say so."""
    own = {"complaint": "none", "caused": "two bulbs burned out, quoted"}
    complaint, _, sheet = papers("Lights bright, and two bulbs burned out", own)
    for text in (complaint, sheet):
        assert "Also damaged by this fault: two bulbs burned out, quoted." in text
        assert "not explained" not in text


def test_nobody_calls_safe_what_was_not_checked() -> None:
    """The advice on driving is of the fault that was found, also where it is left as it is."""
    _, _, sheet = papers(SHAKE, {"complaint": "the shake"})
    drive, leave = sheet.split("What can be done")
    unchecked = "Not checked: the shake. We can't say if it is safe to drive with that."
    assert "What it means for driving The fault that we found: drive with care." in drive
    assert drive.strip().endswith(unchecked)
    note = leave[leave.index("Leave it as it is") :]
    assert "The fault that we found: not repaired." in note
    assert unchecked in note
    _, _, sheet = papers(SHAKE, {"complaint": "none"})
    assert "The fault that we found:" not in sheet
    assert unchecked not in sheet


def test_what_is_left_has_a_next_step_and_a_price() -> None:
    """The repair order says what becomes of it; the customer can have it diagnosed, too."""
    complaint, _, sheet = papers(SHAKE, {"complaint": "the shake"})
    assert complaint.endswith("What becomes of it: ________________________")
    assert "☐ In addition, find the cause of this: the shake" in sheet
    assert "Together with “We repair it”: $" in sheet
    complaint, _, _ = papers(SHAKE, {"complaint": "the shake", "next": "declined"})
    assert complaint.endswith("What becomes of it: declined")
