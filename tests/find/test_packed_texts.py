"""Texts as the page gets them: as numbers of words."""

import json
import random
from typing import Any

from builder.find.packed_texts import (
    LEADING_CHARACTERS,
    NO_MEANING,
    NUMBER_CHARACTERS,
    pack_number,
    pack_texts,
)
from builder.find.symptom_index import SymptomIndex


def test_the_page_unpacks_every_number(page_words: Any) -> None:
    """Small, large and neighboring numbers, in a row without blanks, come out as they went in."""
    numbers = [*range(3000), *random.Random(5).sample(range(10_000_000), 200)]
    random.Random(6).shuffle(numbers)
    packed = "".join(map(pack_number, numbers))
    digits = [NUMBER_CHARACTERS, LEADING_CHARACTERS]
    script = "([text, digits]) => baytreeSearch.unpackNumbers(text, digits)"
    assert page_words(script, [packed, digits]) == numbers


def test_a_number_takes_no_more_characters_than_it_must() -> None:
    """Every character is used that stands in a script as it is, but for the blank and the `<`."""
    plain = [each for each in map(chr, range(256)) if json.dumps(each) == f'"{each}"']
    assert list(NUMBER_CHARACTERS) == [each for each in plain if each not in " <"]


def test_a_word_is_sent_with_what_it_means(small_index: SymptomIndex) -> None:
    """A "no", a phrase of the shop and a word of the shop stand beside the word as written."""
    words = pack_texts(small_index).words
    assert "crank" in words
    assert "crank !crank" in words  # of `No crank`
    assert "turns turn+over+crank" in words
    assert "light lamp" in words
    assert f"the {NO_MEANING}" in words
    assert "flat" not in words  # no text of a tree has it
