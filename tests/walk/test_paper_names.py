"""Words typed at an end are on a paper, or refused with what can be written there."""

from dataclasses import replace

import pytest

from builder.walk.cause_lines import PLACE_LABEL
from builder.walk.events import WriteUp
from builder.walk.job_state import JobState
from builder.walk.known_words import words_of_check
from builder.walk.paper_names import not_on_papers
from builder.walk.steps_taken import steps_taken
from builder.walk.stop_evidence import TECHS_WORDS, stop_evidence
from builder.walk.story import ALSO, FOUND
from tests.walk.drilled import drilled_shop
from tests.walk.played import after
from tests.walk.told_stories import SAMPLES, drilled_state, told

TREE, FIX = "charging/lamp-on", "alternator-fix"


def stopped() -> JobState:
    """Return a walk to an alternator as if the foreman had to decide there."""
    state = drilled_state(TREE, FIX)
    while state.before and state.before.end:
        state = state.before
    frame = replace(state.frames[0], step="not-commanded")
    assert state.end
    end = replace(state.end, kind="foreman", step="not-commanded")
    return replace(state, frames=(frame,), end=end)


@pytest.mark.parametrize(
    ("name", "answer"),
    [("caus", "did you mean `cause`?"), ("outputt", "did you mean `output`?"), ("zzz", "cause")],
)
def test_a_name_that_no_paper_knows_is_refused(name: str, answer: str) -> None:
    """With what it may have meant, and all that can be written there."""
    tables = drilled_shop(SAMPLES).tables
    refused = not_on_papers(tables, drilled_state(TREE, FIX), WriteUp(name=name, text="x"))
    assert refused
    assert answer in refused.message
    assert "Nothing was written. Here you can write: " in refused.message


def test_each_end_takes_what_its_papers_print() -> None:
    """A stop repairs nothing, a fix hands nothing on; words too long would be cut."""
    tables = drilled_shop(SAMPLES).tables
    for state, good, bad in (
        (drilled_state(TREE, FIX), ("repair", "output", "#output"), "handed"),
        (stopped(), ("cause", "handed", "output"), "repair"),
    ):
        for name in good:
            assert not_on_papers(tables, state, WriteUp(name=name, text="x")) is None
            assert not_on_papers(tables, state, WriteUp(name=name, text="x" * 201))
        assert not_on_papers(tables, state, WriteUp(name=bad, text="x"))


def test_a_check_called_like_a_part_of_the_papers_is_written_with_its_mark() -> None:
    """`codes` are the DTCs, `#codes` is the check."""
    own = {"codes": "none stored", "#codes": "the second one", "belt": "loose"}
    assert words_of_check(own, "codes") == "the second one"
    assert words_of_check({"codes": "none stored"}, "codes") == ""
    assert words_of_check(own, "belt") == "loose"


def test_a_stop_tells_first_what_was_found() -> None:
    """The readings out of limits lead, and no line is told again; what was typed is printed."""
    shop, state = drilled_shop(SAMPLES), stopped()
    words = {"cause": "low output", "where": "front of engine", "output": "whines"}
    state = after(shop.tables, state, *(WriteUp(name=name, text=words[name]) for name in words))
    sections = told(state)
    assert [*sections].index(FOUND) < [*sections].index("Cause")
    assert sections[FOUND][:2] == (f"{TECHS_WORDS}: Low output.", f"{PLACE_LABEL}: front of engine")
    assert any("OUT OF LIMITS" in line and "whines" in line for line in sections[FOUND])
    assert not any("OUT OF LIMITS" in line for line in sections.get(ALSO, ()))
    assert stop_evidence(shop.tables, state, steps_taken(shop.tables, state), shop.library)
