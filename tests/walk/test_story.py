"""The story of a job: what passed, what isn't confirmed, codes with status, what was ruled out."""

from dataclasses import replace

import pytest

from builder.walk.job_details import BLANK
from builder.walk.job_state import JobState
from builder.walk.noted_codes import codes_in
from builder.walk.repair_tests import NOT_RUN
from builder.walk.screen import screen
from builder.walk.story import VERIFIED
from tests.walk.drilled import drilled_shop
from tests.walk.played import started, typed
from tests.walk.told_stories import SAMPLES, drilled_state, told


def arrival(state: JobState) -> JobState:
    """Return the walk as it came to its fix, before the repair."""
    while state.before and state.before.end:
        state = state.before
    return state


def test_a_reading_out_of_its_limits_is_marked() -> None:
    """With the reading, its limit and the mark; one within its limits has none."""
    first, convicting, proof = told(drilled_state("charging/lamp-on", "cable-fix"))["Cause"][1:]
    assert first.startswith("Charging voltage at the battery posts: ")  # it led to the cable
    assert "[OUT OF LIMITS]" in first
    assert "limit 0.4 V or less [OUT OF LIMITS]" in convicting
    assert proof.startswith("Voltage, alternator post to its case: ")
    assert "OUT OF" not in proof


def test_a_monitor_that_may_not_have_run_is_not_confirmed() -> None:
    """`not run yet` goes on, and isn't told as passed; `none` is, where it was answered."""
    lines = told(drilled_state("steering/assist-lamp-after-module-swap", "locked"))[VERIFIED]
    assert lines[0].startswith("Not confirmed: ")
    assert lines[0].endswith(": not run yet")
    assert [line.partition(": ")[0] for line in lines[1:-1]] == ["Passed", "Passed"]


def test_a_test_that_was_not_done_is_not_passed() -> None:
    """Before the repair is done, every test is still to come."""
    arrived = arrival(drilled_state("charging/lamp-on", "cable-fix"))
    *lines, by_hand = told(arrived)[VERIFIED]
    assert by_hand.startswith("Complaint gone: ____")
    assert len(lines) == 2
    assert all(line.startswith("Not done: ") for line in lines)
    assert told(arrived)["Correction"] == ("Not done yet.",)


def test_the_screen_tells_what_was_read_before_the_repair() -> None:
    """The cable is measured again to verify it; the customer hears what was wrong with it."""
    state, tables = drilled_state("charging/lamp-on", "cable-fix"), drilled_shop(SAMPLES).tables
    before, after = (one.readings[""].value for one in state.steps if one.step == "cable")
    assert before != after
    assert screen(tables, state)["tell"] == screen(tables, arrival(state))["tell"]


def test_only_what_every_check_speaks_against_is_ruled_out() -> None:
    """The belt is also condemned by water on it, which nobody tried here; the pulley is not."""
    lines = told(drilled_state("charging/lamp-on", "cable-fix"))["Ruled out"]
    assert any(line.startswith("The alternator pulley slips? ") for line in lines)
    assert all(" No. " in line or line.startswith("By test: ") for line in lines)
    assert not any("belt slips" in line for line in lines)
    assert not any(line.startswith("High resistance between alternator") for line in lines)


def test_an_answer_that_was_only_stated_rules_nothing_out() -> None:
    """Somebody's word is no measurement."""
    state = drilled_state("charging/lamp-on", "cable-fix")
    belt = next(at for at, one in enumerate(state.steps) if one.step == "belt")
    event = state.steps[belt].event
    answer = replace(state.done[event], stated=True)
    done = (*state.done[:event], answer, *state.done[event + 1 :])
    lines = told(replace(state, done=done))["Ruled out"]
    assert not any("pulley" in line for line in lines)


def test_what_is_in_the_way_is_told() -> None:
    """Where a check can't be done and nothing leads on, the story says which, and why."""
    tables = drilled_shop(SAMPLES).tables
    begun = started(tables, "charging/lamp-on", enter="belt")
    assert told(typed(tables, begun, "can't test: no lift"))["Cause"] == (
        "Not found: this can't be tested here: How do the belt and alternator pulley look?",
        "In the way: no lift",
        f"Referred to the foreman: {BLANK * 2}",
    )
    assert told(typed(tables, begun, "none it hums"))["Cause"][1] == "Seen: it hums"


@pytest.mark.parametrize(
    ("text", "codes"),
    [
        ("P0562 current, u0131-00 history", [("P0562", "current"), ("U0131-00", "history")]),
        ("C0051 pending confirmed; B1000", [("C0051", "pending, confirmed"), ("B1000", "")]),
        ("part number 40P0562", []),
    ],
)
def test_a_code_keeps_the_status_beside_it(text: str, codes: list[tuple[str, str]]) -> None:
    """Current and history lead to different work; a code without a word has none."""
    assert [*codes_in(text)] == codes


@pytest.mark.parametrize(
    "words", ["none or not run", "none, or not tested yet", "monitor not complete", "incomplete"]
)
def test_words_that_a_monitor_may_hide_behind_confirm_nothing(words: str) -> None:
    """However a tree says it."""
    assert NOT_RUN.search(words)
    assert not NOT_RUN.search("none, all monitors ran")


def test_a_reading_out_of_limits_is_read_again_or_told() -> None:
    """The cable of this repair was; the warning light wire of another wasn't, and it says so."""
    again, not_again = (
        [line for line in told(drilled_state("charging/lamp-on", fix))[VERIFIED]
         if line.startswith("Not measured again: ")]
        for fix in ("cable-fix", "wire-fix")
    )  # fmt: skip
    assert not again
    assert " V before)" in "".join(not_again)
