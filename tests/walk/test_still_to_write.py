"""A finished story says what it still needs before it is filed, and who adds it."""

from dataclasses import replace
from decimal import Decimal

import pytest

from builder.plan.estimate_options import estimate_options
from builder.walk.diagnosis import before_repair
from builder.walk.events import WriteUp
from builder.walk.job_minutes import is_over_estimate, minutes_lines
from builder.walk.job_state import JobState
from builder.walk.reduce import reduce_event
from builder.walk.steps_taken import steps_taken
from builder.walk.still_to_write import asked_lines, open_points
from builder.walk.story import NOT_READY, story_of
from tests.walk.drilled import drilled_shop
from tests.walk.told_stories import SAMPLES, drilled_state, told

TREE, FIX = "charging/lamp-on", "cable-fix"
WORDS = {
    "codes": "none stored",
    "chosen": "fit-here",
    "after": "gone, no DTCs",
    "repair": "Replaced the charge cable",
}


def written(state: JobState, words: dict[str, str]) -> JobState:
    """Return a walk with words for the papers."""
    for name, text in words.items():
        following = reduce_event(drilled_shop(SAMPLES).tables, state, WriteUp(name=name, text=text))
        assert isinstance(following, JobState)
        state = following
    return state


def plain(state: JobState) -> JobState:
    """Return a walk on which nobody wrote down a DTC."""
    return replace(state, steps=tuple(replace(one, wrote={}) for one in state.steps))


@pytest.mark.parametrize(
    ("left_out", "who", "what"),
    [
        ("codes", "tech", "DTCs before the repair, or that there were none"),
        ("chosen", "service writer", "what the customer chose, and its price"),
        ("after", "tech", "complaint and DTCs after the repair"),
    ],
)
def test_what_is_missing_is_said_with_who_adds_it(left_out: str, who: str, what: str) -> None:
    """One thing left out is one line, the terminal asks for it; with all of it there is none."""
    state = plain(drilled_state(TREE, FIX))
    assert NOT_READY not in told(written(state, WORDS))
    rest = written(state, {name: text for name, text in WORDS.items() if name != left_out})
    assert told(rest)[NOT_READY] == (f"The {who} adds: {what}.",)
    shop = drilled_shop(SAMPLES)
    assert any(f"papers {left_out} " in one for one in asked_lines(shop.tables, rest, shop.library))


def test_before_the_repair_nothing_is_missing() -> None:
    """A story of a job that goes on isn't one to file."""
    state = drilled_state(TREE, FIX)
    while state.before and state.before.end:
        state = state.before
    assert NOT_READY not in told(state)


def test_a_repair_well_over_its_estimate_has_a_reason() -> None:
    """More than 0.2 h over asks for it (common practice, no source); the tech's words answer."""
    state, shop = written(plain(drilled_state(TREE, FIX)), WORDS), drilled_shop(SAMPLES)
    taken = tuple(
        replace(one, entry=replace(one.entry, minutes=30))
        for one in steps_taken(shop.tables, state)
    )
    after = taken[len(before_repair(state, taken)) :]
    spent = sum(one.entry.minutes or 0 for one in after if one.entry.event >= 0)
    assert spent > 12
    for over, is_asked in ((12, False), (13, True)):
        hours = str(Decimal(spent - over) / 60)
        assert is_over_estimate(state, taken, hours) is is_asked
    assert not is_over_estimate(state, taken, "")
    why = minutes_lines(shop.tables, state, taken, hours, shop.library.shop)[-1]
    assert why.startswith("Why it took longer: ____")
    late = written(state, {"time": "the bolt was seized"})
    assert told(late)["Time"][-1] == "Why it took longer: the bolt was seized"


def test_the_walk_names_the_reason_even_without_times(monkeypatch: pytest.MonkeyPatch) -> None:
    """A job typed in afterward gets its times on paper: the reason is asked for at its end."""
    state, shop = plain(drilled_state(TREE, FIX)), drilled_shop(SAMPLES)
    *_, last = asked_lines(shop.tables, state, shop.library)
    assert last.startswith("  papers time  why it took longer, if it took well over ")
    own = written(state, {"time": "seized bolt"})
    assert not any("papers time" in one for one in asked_lines(shop.tables, own, shop.library))
    monkeypatch.setattr("builder.walk.still_to_write.is_over_estimate", lambda *_: True)
    asked = asked_lines(shop.tables, state, shop.library)
    over = [one for one in asked if "papers time" in one]
    assert over == ["  papers time  why it took longer than estimated"]


def test_a_choice_is_printed_with_its_price() -> None:
    """By its ID, as the page writes it; in words of one's own it stands as typed."""
    shop, state = drilled_shop(SAMPLES), drilled_state(TREE, FIX)
    options = estimate_options(shop.trees[TREE], FIX, shop.library)
    lines = {}
    for chosen in ("fit-here", "We pay half"):
        story = story_of(shop.tables, written(state, {"chosen": chosen}), shop.library, options)
        lines[chosen], *_ = dict(story.sections)["Chosen and declined"]
    assert lines["fit-here"].startswith(f"Chosen: We repair it, ${options[0].total.low}")
    assert lines["We pay half"].startswith("Chosen: We pay half. Declined: ____")


@pytest.mark.parametrize(
    ("codes", "is_open"), [("P0420 confirmed", True), ("P0420 confirmed, P0141 confirmed", False)]
)
def test_a_dtc_that_is_leaned_on_has_its_number(codes: str, is_open: bool) -> None:
    """`Which other DTCs are stored?` is a second one beside that with which the job began."""
    shop, state = drilled_shop(SAMPLES), written(drilled_state(TREE, FIX), WORDS)
    step = next(one for one in state.steps if one.kind == "check" and one.inside == TREE)
    row = shop.tables[TREE]["steps"][step.step]
    asking = {**row, "text": "Which other DTCs are stored?"}
    steps = {**shop.tables[TREE]["steps"], step.step: asking}
    trees = {**shop.tables.trees, TREE: {**shop.tables[TREE], "steps": steps}}
    tables = replace(shop.tables, trees=trees)
    points = open_points(tables, state, shop.library, {"codes": codes})
    assert any("number of the DTC" in one.words for one in points) is is_open
