"""What the tech said once is on both papers, and nothing asks for it again."""

from dataclasses import replace

import pytest

from builder.prints.customer import customer_sheet
from builder.walk.diagnosis import Diagnosis, diagnosis_of
from builder.walk.events import WriteUp
from builder.walk.job_state import JobState
from builder.walk.reduce import reduce_event
from builder.walk.repair_tests import without_rest
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
    assert "eft rear caliper" in sheet(state)
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
    """No cause is claimed; whether it may be driven, and a line for who takes over."""
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
    assert lines[0] == f"No cause proved on this job. Call the foreman: {row['text']}."
    assert any(line.startswith("Driving: ") for line in lines)
    assert lines[-1].startswith("Handed to: ____")
