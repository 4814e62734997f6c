"""A range that is put right fits the ranges beside it: the hint leads to no next error."""

from decimal import Decimal
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model.checks import Reading
from builder.model.ranges import Range
from builder.model.text import NOWHERE, Text
from builder.reader.range_neighbors import fitting_words
from builder.reader.range_words import parse_range, words_of

READING = Reading(
    NOWHERE, "", Text("V"), Decimal(0), Decimal(300), Decimal("0.1"), None, ()
)  # fmt: skip
CASES = [
    (["0-50", "50-300"], {"0-50": "0 to below 50", "50-300": "50 to 300"}),
    (["under 10.5", "over 10.5"], {"under 10.5": "below 10.5", "over 10.5": "at least 10.5"}),
    (["below 10.5", "over 10.5"], {"over 10.5": "at least 10.5"}),
    (["at most 10.5", "over 10.5"], {"over 10.5": "above 10.5"}),
    (["at most 10.5", "10.5-300"], {"10.5-300": "above 10.5 to 300"}),
    (["<50", "above 50"], {"<50": "at most 50"}),
    (["0-50", "51-300"], {"0-50": "0 to below 51", "51-300": "51 to 300"}),
    (["below 50", "otherwise"], {"otherwise": "50 to 300"}),
    (["10 to 50", "otherwise"], {}),
    (["12.5V", "no idea"], {"12.5V": "exactly 12.5"}),
]


@pytest.mark.parametrize(("typed", "fitting"), CASES)
def test_neighbors_decide_who_takes_a_shared_end(typed: list[str], fitting: dict[str, str]) -> None:
    """A range that is right already stays; the others meet it."""
    assert fitting_words(tuple(typed), READING) == fitting


@given(st.lists(st.integers(1, 299), min_size=1, max_size=5, unique=True), st.randoms())
def test_ranges_that_share_their_ends_cover_all_once(ends: list[int], random: object) -> None:
    """Dashes throughout: after the hints, every reading has exactly one result."""
    cuts = [0, *sorted(ends), 300]
    typed = [f"{low}-{high}" for low, high in pairwise(cuts)]
    random.shuffle(typed)  # type: ignore[attr-defined]
    ranges = [parse_range(words) for words in fitting_words(tuple(typed), READING).values()]
    for half in range(601):
        taking = [
            one for one in ranges if isinstance(one, Range) and one.contains(Decimal(half) / 2)
        ]
        assert len(taking) == 1


FORMS = (
    "below 5", "above 5", "at least 5", "at most 5", "exactly 0", "1 to 2", "above 1 to 2",
    "1 to below 2", "above 1 to below 2", "OL", "any",
)  # fmt: skip


@pytest.mark.parametrize("words", FORMS)
def test_a_range_is_written_as_it_is_read(words: str) -> None:
    """Reading and writing agree."""
    span = parse_range(words)
    assert isinstance(span, Range)
    assert words_of(span) == words
