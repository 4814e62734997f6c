"""Folding, stemming, and the "no" that stays."""

import json
import unicodedata
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.find.word_forms import (
    drop_stop_words,
    opposite,
    split_words,
    stem_word,
    stem_words,
)

FAMILIES = [  # words that a search should take for one another
    "crank cranks cranking cranked",
    "battery batteries",
    "brake brakes braking braked",
    "stall stalls stalling stalled",
    "pull pulls pulling pulled",
    "charge charges charging charged",
    "pulsate pulsates pulsating pulsation",
    "communicate communicates communicating communication",
    "regenerate regeneration regenerating",
    "slow slowly",
    "harsh harshly harshness",
    "replace replaces replacing replaced replacement",
    "align aligned alignment",
    "recognise recognised recognize recognized",
    "vapour vapor vapours",
    "color color colors",
    "slip slips slipping slipped",
    "supply supplies",
    "calibrate calibration calibrated",
]
ODD = ["a", "io", "ss", "bees", "eed", "string", "14ies", "éclairs", "fuzz", "pizzas", "hissing"]
STRANGERS = ["start starter", "lean leak", "speed spend", "gas gauge", "bus busy", "miss mist"]


@pytest.mark.parametrize("family", FAMILIES)
def test_endings_do_not_matter(family: str) -> None:
    """Singular, plural and the forms of a verb come to one stem."""
    assert len({stem_word(word) for word in family.split()}) == 1


@pytest.mark.parametrize("pair", STRANGERS)
def test_other_words_stay_other_words(pair: str) -> None:
    """A stem does not swallow what tells two words apart."""
    one, other = pair.split()
    assert stem_word(one) != stem_word(other)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Won't crank!", ["wont", "crank"]),
        ("won’t crank", ["wont", "crank"]),
        ("anti-lock  LAMP", ["anti", "lock", "lamp"]),
        ("A/C blows warm", ["ac", "blows", "warm"]),
        ("14.8 V at the posts", ["14", "8", "v", "at", "the", "posts"]),
        ("Überhitzung", ["uberhitzung"]),
        ("", []),
    ],
)
def test_text_is_folded_to_what_people_type(text: str, expected: list[str]) -> None:
    """Case, accents, apostrophes and hyphens do not matter."""
    assert split_words(text) == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("no crank", ["!crank"]),
        ("does not crank", ["!crank"]),
        ("won't turn over", ["!turn", "over"]),
        ("cranks but does not start", ["crank", "!start"]),
        ("no", []),
        ("lamp will not go out", ["lamp", "!out"]),
    ],
)
def test_a_no_is_bound_to_what_it_denies(text: str, expected: list[str]) -> None:
    """"No crank" is not "crank"; the no goes to the next word that says something."""  # fmt: skip
    assert drop_stop_words(stem_words(split_words(text))) == tuple(expected)


@given(st.text())
def test_surfaces_are_stable(text: str) -> None:
    """Folding what is folded changes nothing, and no blank or capital is left."""
    once = split_words(text)
    assert split_words(" ".join(once)) == once
    assert all(word == word.lower() and " " not in word for word in once)


@given(st.sampled_from(["crank", "!crank"]))
def test_flipping_twice_changes_nothing(token: str) -> None:
    """The opposite of the opposite is the word itself."""
    assert opposite(opposite(token)) == token
    assert opposite(token) != token


def test_the_page_comes_to_the_same_stems(page_words: Any) -> None:
    """The page takes the same endings off."""
    words = sorted({word for family in FAMILIES + STRANGERS for word in family.split()})
    stems = page_words("(words) => words.map(baytreeSearch.stemWord)", [*words, *ODD])
    assert stems == [stem_word(word) for word in [*words, *ODD]]


def test_the_page_folds_as_the_command_does(page_words: Any) -> None:
    """Letters of any script, marks and signs give the same words on both sides."""
    signs = [chr(code) for code in [*range(32, 0x250), *range(0x370, 0x530), 0x2019, 0x4E2D, 0xDF]]
    texts = [f"a{sign}b" for sign in signs if unicodedata.category(sign) != "No"]
    found = page_words("(texts) => texts.map(baytreeSearch.splitWords)", texts)
    assert json.dumps(found) == json.dumps([split_words(text) for text in texts])
