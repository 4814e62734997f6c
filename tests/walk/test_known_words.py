"""What the tech said once is on both papers, and nothing asks for it again."""

from dataclasses import replace

import pytest

from builder.prints.customer import customer_sheet
from builder.walk.cause_lines import ended_words
from builder.walk.diagnosis import Diagnosis, diagnosis_of
from builder.walk.events import WriteUp
from builder.walk.job_state import JobState
from builder.walk.reduce import reduce_event
from builder.walk.repair_tests import without_rest
from builder.walk.story import NOT_READY
from builder.wording.finding_text import finding_text
from tests.prints.printed_words import words
from tests.walk.drilled import drilled_shop
from tests.walk.told_stories import SAMPLES, drilled_state, told

TREE, FIX = "brakes/soft-pedal", "caliper-fix"


def with_words(own: dict[str, str]) -> JobState:
    """Return a walk to a wet caliper with words for the papers."""
    state = drilled_state(TREE, FIX)
    for name, text in own.items():
        following = reduce_event(drilled_shop(SAMPLES).tables, state, WriteUp(name=name, text=text))
        assert isinstance(following, JobState)
        state = following
    return state


def sheet(state: JobState) -> str:
    """Print the customer's sheet."""
    shop = drilled_shop(SAMPLES)
    found = diagnosis_of(shop.tables, state, shop.library)
    assert isinstance(found, Diagnosis)
    return words(customer_sheet(shop.trees[TREE], FIX, shop.library, "", found))


def test_a_place_that_nobody_named_has_a_line() -> None:
    """A car has several calipers, and neither tree nor tech says which."""
    state = with_words({})
    assert any(line.startswith("Where (side, axle, ") for line in told(state)["Correction"])
    assert "Where (side, axle, or cylinder):" in sheet(state)


@pytest.mark.parametrize("name", ["where", "repair"])
def test_a_place_is_named_once(name: str) -> None:
    """In its own field or in the tech's words of the repair; no line for a pen is left."""
    state = with_words({name: "Left rear caliper"})
    text = " ".join(told(state)["Correction"])
    assert "eft rear caliper" in text
    assert "eft rear" in sheet(state)
    assert "Where (" not in text + sheet(state)


def test_the_tech_s_words_settle_which_part_it_was() -> None:
    """The cause names that part alone, and no line asks for it."""
    lines = told(with_words({"repair": "Replaced the left rear caliper, bled the brakes"}))["Cause"]
    assert not any("xactly what" in line for line in lines)


def test_a_test_that_noticed_nothing_leaves_out_what_is_open() -> None:
    """`nothing` on the road says nothing of a shake that isn't diagnosed."""
    line = f"Passed: {finding_text('What do you hear or feel on the road?', 'nothing')}"
    assert line == "Passed: Nothing heard or felt on the road"
    left = f"{line}, apart from what is not diagnosed yet: the shake"
    assert without_rest(line, "the shake") == left
    assert without_rest(line, "none") == without_rest(line, "") == line
    assert without_rest("Passed: First stop in the lot", "the shake").endswith("the lot")


def test_a_stop_says_how_the_car_is_handed_on() -> None:
    """What was done and no order; whether it may be driven, who takes over, what is owed."""
    shop = drilled_shop(SAMPLES)
    state = drilled_state(TREE, FIX)
    (stop, row) = next(
        (name, row) for name, row in shop.tables[TREE]["steps"].items()
        if row["kind"] == "stop" and row["stop"] == "foreman"
    )  # fmt: skip
    frame = replace(state.frames[0], step=stop)
    assert state.end
    ended = replace(state, frames=(frame,), end=replace(state.end, kind="foreman", step=stop))
    lines = told(ended)["Cause"]
    outcome, _, advice = ended_words(row["text"])
    assert lines[0] == f"No cause proved on this job. {outcome}".rstrip()
    assert any(line.startswith("Driving: ") for line in lines)
    assert any(line.startswith(f"Advice: {advice}") for line in lines)
    assert lines[-1].startswith("Referred to the foreman: ____")
    assert told(ended)[NOT_READY][0].endswith("who took the job over.")
    following = reduce_event(shop.tables, ended, WriteUp(name="handed", text="M. Lind"))
    assert isinstance(following, JobState)
    assert told(following)["Cause"][-1] == "Referred to the foreman: M. Lind"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("Hand it to a trained high-voltage tech", ("", "a trained high-voltage tech", "")),
        ("Ask the foreman, nothing is proved", ("Nothing is proved.", "the foreman", "")),
        ("Worn inside, the foreman prices it",
         ("Worn inside, the foreman prices it.", "the foreman", "")),
        ("Don't crank it", ("", "the foreman", "Don't crank it.")),
        ("Charge port wiring, trained tech only",
         ("Charge port wiring, trained tech only.", "the foreman", "")),
    ],
)  # fmt: skip
def test_the_words_of_a_stop_are_told_as_what_was_done(
    text: str, said: tuple[str, str, str]
) -> None:
    """Who goes on, what came out, and what is only advice: no order stands as a deed."""
    assert ended_words(text) == said
