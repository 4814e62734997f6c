"""Misspelt words, held against a general library for distances, and against plain rules."""

import re
from collections.abc import Mapping
from typing import Any

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from builder.find.spelling import (
    edit_distance,
    edits_allowed,
    is_usual_slip,
    nearest_word,
    split_run_together,
)

LETTERS = st.text("abc", max_size=7)
KNOWN = {
    "alternator": 5,
    "battery": 9,
    "light": 20,
    "lamp": 12,
    "start": 7,
    "starter": 3,
    "lean": 1,
}


@given(one=LETTERS, other=LETTERS)
@example(one="ab", other="ba")
@example(one="aaa", other="a")
def test_the_distance_is_that_of_the_reference_library(one: str, other: str) -> None:
    """Optimal string alignment of RapidFuzz gives the same count, cut off at the limit."""
    reference = pytest.importorskip("rapidfuzz.distance").OSA.distance(one, other)
    for limit in range(4):
        assert edit_distance(one, other, limit) == min(reference, limit + 1)


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("altenator", "alternator"),
        ("alternater", "alternator"),
        ("alterantor", "alternator"),
        ("batery", "battery"),
        ("ligth", "light"),
        ("startr", "starter"),
        ("altnatr", None),  # three letters missing: not guessed
        ("lam", None),  # three letters are never guessed
        ("lemon", None),
        ("u0121", None),
    ],
)
def test_the_nearest_word_is_what_was_meant(typed: str, meant: str | None) -> None:
    """One edit from four letters on, two from seven on, figures and short words never."""
    assert nearest_word(typed, KNOWN) == meant


def test_a_short_word_begins_as_it_is_typed() -> None:
    """Of up to five letters the first is never guessed: `worse` is no misspelled `horse`."""
    known = {"horse": 1, "brakes": 1}
    assert nearest_word("worse", known) is None
    assert nearest_word("prakes", known) == "brakes"


WORDS = st.text("abe", min_size=3, max_size=8)


def meant(word: str, known: Mapping[str, int]) -> str | None:
    """Return what was meant. Reference: the rules as they are written, every word measured."""
    found = []
    for candidate, uses in known.items():
        most = edits_allowed(word)
        if word[0] != candidate[0]:
            most = min(most, 1 if len(word) > 5 else 0)
        if uses < 0:
            most = min(most, 1)
        edits = edit_distance(word, candidate, 9)
        if 0 < edits <= most and len(candidate) > 3:
            left_out = re.fullmatch(f".*{'.*'.join(word)}.*", candidate)
            slip = left_out or re.sub("[ae]", "", word) == re.sub("[ae]", "", candidate)
            found.append((edits, word[0] != candidate[0], not slip, -uses, candidate))
    return min(found)[-1] if found else None


@given(word=WORDS, known=st.dictionaries(WORDS, st.integers(-1, 2), max_size=12))
@settings(max_examples=150)
def test_of_all_known_words_the_nearest_is_meant(word: str, known: dict[str, int]) -> None:
    """Whatever is known: no shortcut loses one, and of equals the first by the rules is taken."""
    known.pop(word, None)
    assert nearest_word(word, known) == meant(word, known)


@given(word=st.text("ab", max_size=9), known=st.sets(st.text("ab", min_size=2, max_size=6)))
def test_words_run_together_are_parted_at_the_last_place(word: str, known: set[str]) -> None:
    """Of all places that leave two known words of three letters or more."""
    known |= {word[:4], word[3:], word[:3], word[4:]}
    parts = [(word[:at], word[at:]) for at in range(3, len(word) - 2)]
    both = [pair for pair in parts if known.issuperset(pair)]
    assert split_run_together(word, known) == (both[-1] if both else None)


def test_edits_grow_with_the_word() -> None:
    """None up to three letters, one to six, two beyond."""
    assert [edits_allowed("x" * length) for length in range(3, 9)] == [0, 1, 1, 1, 2, 2]


def test_a_missing_blank_is_put_back() -> None:
    """Two known words typed as one are parted, the longest first; of each three letters or more."""
    assert split_run_together("batterylight", KNOWN) == ("battery", "light")
    known = {"low", "lamp", "light", "lowlight"}
    assert split_run_together("lightlamp", known) == ("light", "lamp")
    assert split_run_together("lowlightlow", known) == ("lowlight", "low")
    assert split_run_together("lowlamp", known) == ("low", "lamp")
    assert split_run_together("lightly", KNOWN) is None
    assert split_run_together("lightly", {"light": 1, "ly": 1}) is None


@given(word=LETTERS, places=st.sets(st.integers(0, 6)))
def test_letters_left_out_are_seen(word: str, places: set[int]) -> None:
    """Whatever letters are taken out of a word, it is still that word with letters left out."""
    left = "".join(letter for at, letter in enumerate(word) if at not in places)
    assert is_usual_slip(left, word)


def test_a_mixed_up_vowel_is_a_usual_slip() -> None:
    """`seet` is as likely a seat as sweet, so the one that is said more often is meant."""
    assert is_usual_slip("seet", "seat")
    assert not is_usual_slip("seet", "feet")
    assert nearest_word("seet", {"sweet": 1, "seat": 9}) == "seat"


def test_the_page_guesses_the_same(page_words: Any) -> None:
    """Every one-edit and swap of a few words leads the page to the same guess."""
    typed = [
        made
        for word in ("alternator", "battery", "light")
        for at in range(len(word))
        for made in (
            word[:at] + word[at + 1 :],
            word[:at] + "x" + word[at:],
            word[:at] + word[at + 1 : at + 2] + word[at : at + 1] + word[at + 2 :],
        )
    ]
    found = page_words(
        "([typed, known]) => typed.map((word) => baytreeSearch.nearestWord(word, new Map(known)))",
        [typed, list(KNOWN.items())],
    )
    assert found == [nearest_word(word, KNOWN) for word in typed]
