"""An answer says on paper what it says beside its menu."""

import pytest

from builder.wording.plain_answer import is_rest, plain_answer


@pytest.mark.parametrize(
    ("answer", "answers", "words"),
    [
        ("orange cables there", ["orange cables there", "yes", "no"], "orange cables there"),
        ("none of these", ["misfire", "too lean", "none of these"], "none of: misfire; too lean"),
        ("anything else", ["hard", "anything else"], "none of: hard"),
        ("neither", ["dirt, or a kink", "neither"], "neither dirt nor a kink"),
        ("neither", ["both sides", "one side", "neither"], "neither"),
        ("anything else", ["yes", "broke off", "anything else"], "no, another answer"),
        ("security", ["yes", "security"], "no, security"),
        ("no or only one key", ["yes", "no or only one key"], "no or only one key"),
        ("yes, slowly", ["yes", "yes, slowly"], "yes, slowly"),
        ("unknown", ["yes", "unknown"], "unknown"),
        ("another car", ["this car", "another car"], "another car"),
    ],
)
def test_an_answer_stands_alone(answer: str, answers: list[str], words: str) -> None:
    """The rest is said by what it isn't; beside a yes, what is no yes is a no."""
    assert plain_answer(answer, answers) == words


def test_what_an_answer_names_is_no_rest() -> None:
    """Only words that name nothing at all."""
    assert is_rest("any other, or none")
    assert not is_rest("another circuit")
