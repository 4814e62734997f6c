"""DTCs answer what a tree asks: those typed at the question, and those read before it."""

import pytest

from builder.walk.events import Start
from builder.walk.job_state import JobState
from builder.walk.read_codes import answers_of_codes
from builder.walk.screen import screen
from builder.walk.walk_tables import WalkTables
from tests.walk.played import after, refused, started, typed

TREE = "network/module-silent"
CODES = {"U0121": "abs-module", "U0131": "eps-module", "P0562-16": "battery"}


@pytest.mark.parametrize(
    ("text", "answers"),
    [
        ("U0121", ["abs-module"]),
        ("u0121-87", ["abs-module"]),
        ("U0131 and U0121, both stored", ["eps-module", "abs-module"]),
        ("P0562-16", ["battery"]),
        ("P0562", []),
        ("XU0121", []),
        ("U01210", []),
        ("", []),
    ],
)
def test_the_answers_that_dtcs_stand_for(text: str, answers: list[str]) -> None:
    """In any letter case, with a failure type or without, each answer once."""
    assert answers_of_codes(CODES, text) == answers


def test_a_dtc_answers_the_question(samples: WalkTables) -> None:
    """Typed instead of an answer, it fills in the module that it stands for."""
    state = typed(samples, started(samples, TREE), "U0121")
    assert state.frames[0].filled == {"module": "abs-module"}


def test_two_dtcs_of_two_modules_are_for_the_tech_to_choose(samples: WalkTables) -> None:
    """Nothing is guessed."""
    message = refused(samples, started(samples, TREE), "U0121 U0131")
    assert message == "those DTCs stand for abs-module and eps-module: choose one"


def test_a_dtc_of_no_answer_is_refused(samples: WalkTables) -> None:
    """Like any other word that isn't an answer."""
    assert "isn't one of" in refused(samples, started(samples, TREE), "P0562")


def test_what_was_read_before_is_offered(samples: WalkTables) -> None:
    """A DTC in the complaint or in what was written down points to its answer."""
    asked = Start(tree=TREE, complaint="no response, U0131 stored")
    assert screen(samples, after(samples, JobState(), asked))["asks"][0]["offered"] == [
        "eps-module"
    ]
    assert "offered" not in screen(samples, started(samples, TREE))["asks"][0]
