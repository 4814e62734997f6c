"""An answer that covers the rest names what it isn't: on paper nobody has the menu."""

import pytest

from builder.wording.rest_answer import is_rest, rest_words


@pytest.mark.parametrize(
    ("answer", "answers", "words"),
    [
        ("none of these", ["misfire", "too lean", "none of these"], "none of: misfire; too lean"),
        ("anything else", ["hard", "anything else"], "none of: hard"),
        ("neither", ["both sides", "one side", "neither"], "neither"),
        ("anything else", ["yes", "broke off", "anything else"], "anything else"),
        ("another car", ["this car", "another car"], "another car"),
    ],
)
def test_the_rest_is_said_by_what_it_is_not(answer: str, answers: list[str], words: str) -> None:
    """Except where the question says it: of two sides, or of what it takes."""
    assert rest_words(answer, answers) == words


def test_what_an_answer_names_is_no_rest() -> None:
    """Only words that name nothing at all."""
    assert is_rest("any other, or none")
    assert not is_rest("another circuit")
