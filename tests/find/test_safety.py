"""When the search shows a safety line."""

import pytest

from builder.find.danger_words import WORD_GROUPS
from builder.find.dangers import DANGERS, Danger
from builder.find.safety import danger_words, safety_lines
from builder.find.word_forms import split_words

NAMES = {danger.text: danger.name for danger in DANGERS}


def dangers_of(text: str) -> list[str]:
    """Return the names of the dangers that a text tells of."""
    return [NAMES[line] for line in safety_lines(split_words(text))]


@pytest.mark.parametrize(
    ("text", "names"),
    [
        ("fuel smell", ["fuel"]),
        ("smells of gas", ["fuel"]),
        ("smelled gasoline", ["fuel"]),
        # the words of a sign stand near each other, in any order
        ("gas now one two three four smell", ["fuel"]),
        ("gas now one two three four five smell", []),
        # a harmless phrase is taken out first, the longest first
        ("gas cap smell", []),
        ("no brakes", ["brakes"]),
        ("no brake lights", []),
        ("smoke", ["fire"]),
        ("blue smoke", []),
        ("blue smoke under the hood", ["fire"]),
        ("steering locked up", ["steering"]),
        ("steering wheel button stuck", []),
        ("hv battery", ["high voltage"]),
        # the gravest first, two at most
        ("airbag light, no brakes, smoke", ["fire", "brakes"]),
        ("", []),
    ],
)
def test_signs_of_danger_are_read(text: str, names: list[str]) -> None:
    """Each text tells of these dangers."""
    assert dangers_of(text) == names


@pytest.mark.parametrize("danger", DANGERS, ids=lambda danger: danger.name)
def test_a_line_says_to_stop_and_who_may_go_on(danger: Danger) -> None:
    """A signal word, stop or pull over, what not to do, and a qualified tech."""
    text = danger.text
    assert text.startswith(("WARNING: ", "DANGER: "))
    assert "Do not" in text
    assert "qualified" in text
    assert any(words in text for words in ("Stop", "stop", "Pull over"))
    assert len(text.split()) <= 30


def test_every_group_of_words_is_used_and_every_sign_can_be_read() -> None:
    """A group is written in capitals wherever it is meant; none is left over or misspelled."""
    signs = " ".join(";".join(danger.signs for danger in DANGERS).split())
    parts = {part.strip() for part in signs.replace(" unless ", ",").replace(";", ",").split(",")}
    groups = {part for part in parts if part.isupper()}
    assert groups == WORD_GROUPS.keys()
    assert "" not in parts


def test_words_of_danger_are_never_corrected() -> None:
    """The search knows them though no tree has them; plain English it knows anyway."""
    assert {"gasoline", "stench", "airbag", "squib"} <= danger_words()
    assert not {"work", "FUEL"} & danger_words()
