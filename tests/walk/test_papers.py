"""What the papers of a job say beside the tree: the tech's words, codes, times, names."""

from dataclasses import replace
from pathlib import Path

import pytest

from builder.walk.diagnosis import Diagnosis, diagnosis_of
from builder.walk.events import WriteUp
from builder.walk.job_state import JobState, Refused, is_repairing
from builder.walk.measured_lines import CIRCLE_ONE, check_line
from builder.walk.noted_codes import NO_TEXT, NONE_RECORDED, code_lines, named_codes
from builder.walk.record import record_of
from builder.walk.reduce import reduce_event
from builder.walk.story import story_of
from builder.walk.to_fill import FillRow, checked
from tests.walk.drilled import drilled_fix, drilled_shop

SAMPLES = Path(__file__).parents[1] / "samples"


def belt() -> JobState:
    """Return a walk at the repair of a belt."""
    job = drilled_fix(SAMPLES, "charging/lamp-on", "belt-fix")
    assert job
    state = job.state
    while not is_repairing(state):
        assert state.before
        state = state.before
    return state


def said(state: JobState, name: str, text: str) -> JobState:
    """Return a walk with words for the papers."""
    following = reduce_event(drilled_shop(SAMPLES).tables, state, WriteUp(name=name, text=text))
    assert isinstance(following, JobState)
    return following


def found(state: JobState) -> Diagnosis:
    """Return what a walk found."""
    shop = drilled_shop(SAMPLES)
    diagnosis = diagnosis_of(shop.tables, state, shop.library)
    assert isinstance(diagnosis, Diagnosis)
    return diagnosis


def test_the_tech_s_words_take_the_place_of_the_tree_s() -> None:
    """Cause, repair, and which of several things was seen; taken back, the tree's are there."""
    state = belt()
    (check, *_) = found(state).evidence
    assert check_line(check).endswith(f"({CIRCLE_ONE})")
    own = said(said(said(state, check.step, check.parts[0]), "cause", "The belt was loose."),
               "repair", "Replaced the belt")  # fmt: skip
    diagnosis = found(own)
    assert check_line(diagnosis.evidence[0]).endswith(f": {check.parts[0]}")
    assert (diagnosis.cause, diagnosis.repair) == ("The belt was loose", "Replaced the belt")
    assert record_of(own)["write_up"]
    assert found(said(own, "cause", "")).cause == found(state).cause


def test_words_for_the_papers_belong_to_an_end() -> None:
    """Before one is reached there is nothing to say them of."""
    state = belt()
    while state.end:
        assert state.before
        state = state.before
    tables = drilled_shop(SAMPLES).tables
    assert isinstance(reduce_event(tables, state, WriteUp(name="cause", text="x")), Refused)


def test_what_nobody_recorded_is_a_blank() -> None:
    """Codes, start and end: to be written in by hand, never made up."""
    shop = drilled_shop(SAMPLES)
    state = belt()
    plain = replace(state, events=tuple(replace(event, at="") for event in state.events))
    story = dict(story_of(shop.tables, plain, shop.library).sections)
    assert story["Trouble codes"][0] == NONE_RECORDED
    assert story["Time"][0].count("____") >= 2


def test_codes_of_the_job_are_listed_with_their_meaning() -> None:
    """Typed at the start, they are those before the repair."""
    shop = drilled_shop(SAMPLES)
    story = story_of(shop.tables, belt(), shop.library, (), {"codes": "U0131 current, B1FFF"})
    lines = dict(story.sections)["Trouble codes"]
    assert [line.partition(":")[2] for line in lines] == [
        " current, before the repair",
        " status not recorded, before the repair",
    ]


def test_a_customer_is_told_the_codes_that_were_stored() -> None:
    """Each with its status; `none stored` is no code. Nobody gives a customer a text to fill in."""
    library = drilled_shop(SAMPLES).library
    codes = named_codes([], ("P0562 stored", "none stored"), library)
    assert codes == ("P0562: stored",)


@pytest.mark.parametrize(
    ("typed", "line"),
    [
        ("P0562 stored", f"P0562 ({NO_TEXT}): stored"),
        ("P0562 (stored, in the PCM)", f"P0562 ({NO_TEXT}): stored, in the PCM"),
        ("C1560 stored, EPS (not set up)", "C1560: stored, EPS (not set up)"),
        ("(C1560 EPS not set up)", "C1560: EPS not set up, status not recorded"),
        ("U0131 no link", "U0131: no link, status not recorded"),
    ],
)
def test_nothing_typed_of_a_code_is_lost(typed: str, line: str) -> None:
    """Words behind a code that the shop's list lacks are its text; a status is asked for."""
    library = drilled_shop(SAMPLES).library
    assert code_lines([], "", library, typed) == [f"{line}, before the repair"]


def test_words_ahead_of_the_codes_are_kept() -> None:
    """Nobody knows which codes they are of: the line stands as it was typed."""
    first, *_ = code_lines([], "", drilled_shop(SAMPLES).library, "EPS module: C1560 stored")
    assert first == "As written down: EPS module: C1560 stored, before the repair"


def test_other_goes_by_its_own_name() -> None:
    """A module without an entry is named by who found it; without such a choice it is refused."""
    ask = FillRow(name="module", ask="Which?", one_of=["pcm", "other"])
    assert checked(ask, "seat module") == "seat module"
    assert isinstance(checked({**ask, "one_of": ["pcm"]}, "seat module"), Refused)
