"""When the search shows a safety line."""

import re

import pytest

from builder.find.danger_words import WORD_GROUPS
from builder.find.dangers import DANGERS, Danger
from builder.find.plain_forms import SMALL_WORDS, plain_stems
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
        # irregular forms are one with the plain form, small words are passed over
        ("it smelt of gasoline", ["fuel"]),
        ("the pedal just sank", ["brakes"]),
        # the words of a sign stand near each other, in any order
        ("gas now one two three four smell", ["fuel"]),
        ("gas now one two three four five smell", []),
        # every "not" is the same one, and up to two words may stand behind it
        ("car won't stop", ["brakes"]),
        ("car couldn't be stopped", ["brakes"]),
        ("car hardly slows down", ["brakes"]),
        ("car not one two stop", ["brakes"]),
        ("car not one two three stop", []),
        # what takes a sign away does so near it
        ("chime won't stop", []),
        ("blue smoke", []),
        ("blue smoke under the hood", ["fire"]),
        # a harmless phrase is taken out first, for its own danger alone
        ("gas cap", []),
        ("gas cap smells of gas", ["fuel"]),
        ("no brakes", ["brakes"]),
        ("no brake lights", []),
        ("parking brake light", []),
        ("parking brake won't hold", ["rolling"]),
        ("smoke", ["fire"]),
        ("steering locked up", ["steering"]),
        ("steering wheel button stuck", []),
        ("hv battery", ["high voltage"]),
        # one sign for all that can break, of all that carries
        ("tie rod snapped", ["steering"]),
        ("hitch is cracking", ["broken frame"]),
        ("lug nuts backed off", ["wheel"]),
        ("lug nut size", []),
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


def entries(text: str) -> list[str]:
    """Return the phrases and names of groups in a text."""
    return [each.strip() for each in re.split("[,;+]| unless ", " ".join(text.split()))]


def test_every_group_of_words_is_used_and_every_sign_can_be_read() -> None:
    """A group is written in capitals wherever it is meant; none is left over or misspelled."""
    signs = [it for danger in DANGERS for it in entries(danger.signs + ";" + danger.harmless)]
    inside = [it for words in WORD_GROUPS.values() for it in entries(words)]
    groups = {it for it in (*signs, *inside) if it.isupper()}
    assert groups == WORD_GROUPS.keys()
    assert "" not in inside


def test_no_phrase_loses_a_word() -> None:
    """A small word in a phrase would be passed over, and the phrase mean more than it says."""
    texts = (*WORD_GROUPS.values(), *(it.signs + ";" + it.harmless for it in DANGERS))
    phrases = {it for text in texts for it in entries(text)} - WORD_GROUPS.keys()
    small = set(SMALL_WORDS.split())
    assert [phrase for phrase in sorted(phrases) if small & set(phrase.split())] == []


def test_no_word_of_danger_stands_twice() -> None:
    """A second spelling with the same stem says nothing new, and nobody knows which to change."""
    for words in WORD_GROUPS.values():
        plain = [tuple(plain_stems(it.split())) for it in entries(words) if not it.isupper()]
        assert len(plain) == len(set(plain)), words
    for danger in DANGERS:
        signs = [" ".join(sign.split()) for sign in danger.signs.split(";")]
        assert len(signs) == len(set(signs)), danger.name


def test_words_of_danger_are_never_corrected() -> None:
    """The search knows them though no tree has them."""
    assert {"gasoline", "stench", "airbag", "squib", "sank"} <= danger_words()
    assert not {"FUEL", "fuel part"} & danger_words()
