"""Folding, stemming, and the "no" that stays."""

import json
import unicodedata
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from playwright.sync_api import Browser

from builder.find.words import NEGATORS, STOP, content, flipped, stem, surfaces, tokens

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
    "colour color colours",
    "slip slips slipping slipped",
    "supply supplies",
    "calibrate calibration calibrated",
]
STRANGERS = ["start starter", "lean leak", "speed spend", "gas gauge", "bus busy", "miss mist"]


@pytest.mark.parametrize("family", FAMILIES)
def test_endings_do_not_matter(family: str) -> None:
    """Singular, plural and the forms of a verb come to one stem."""
    assert len({stem(word) for word in family.split()}) == 1


@pytest.mark.parametrize("pair", STRANGERS)
def test_other_words_stay_other_words(pair: str) -> None:
    """A stem does not swallow what tells two words apart."""
    one, other = pair.split()
    assert stem(one) != stem(other)


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
    assert surfaces(text) == expected


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
    assert content(tokens(surfaces(text))) == expected


@given(st.text())
def test_surfaces_are_stable(text: str) -> None:
    """Folding what is folded changes nothing, and no blank or capital is left."""
    once = surfaces(text)
    assert surfaces(" ".join(once)) == once
    assert all(word == word.lower() and " " not in word for word in once)


@given(st.sampled_from(["crank", "!crank"]))
def test_flipping_twice_changes_nothing(token: str) -> None:
    """The opposite of the opposite is the word itself."""
    assert flipped(flipped(token)) == token
    assert flipped(token) != token


def test_the_page_has_the_same_lists_and_stems(browser: Browser, page_words: Any) -> None:
    """The page drops the same words, knows the same negations and comes to the same stems."""
    words = sorted({word for family in FAMILIES + STRANGERS for word in family.split()})
    found = page_words(
        "(words) => [[...baytreeFind.STOP], [...baytreeFind.NEGATORS],"
        " words.map(baytreeFind.stem)]",
        words,
    )
    assert set(found[0]) == STOP
    assert set(found[1]) == NEGATORS
    assert found[2] == [stem(word) for word in words]


def test_the_page_folds_as_the_command_does(page_words: Any) -> None:
    """Letters of any script, marks and signs give the same words on both sides."""
    signs = [chr(code) for code in [*range(32, 0x250), *range(0x370, 0x530), 0x2019, 0x4E2D, 0xDF]]
    texts = [f"a{sign}b" for sign in signs if unicodedata.category(sign) != "No"]
    found = page_words("(texts) => texts.map(baytreeFind.surfaces)", texts)
    assert json.dumps(found) == json.dumps([surfaces(text) for text in texts])
