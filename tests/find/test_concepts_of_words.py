"""Words parted into concepts, held against every way to read them."""

from collections.abc import Sequence
from itertools import combinations, product

from hypothesis import given, settings
from hypothesis import strategies as st

from builder.find.common_words import STOP_WORDS
from builder.find.phrasebook import (
    GAP,
    BookPhrase,
    Phrasebook,
    Tokens,
    find_concepts,
    make_phrasebook,
)
from builder.find.search_table import WordRow
from builder.find.word_forms import drop_stop_words, opposite, without_no

SAID = st.lists(st.sampled_from(["hum", "tap", "buzz", "it", "on", "not"]), min_size=1, max_size=3)
TEXTS = SAID.map(" ".join)
ROWS = st.lists(st.builds(WordRow, TEXTS, st.tuples(TEXTS) | st.tuples(TEXTS, TEXTS)), max_size=4)
TOKENS = st.lists(st.sampled_from(["hum", "tap", "bus", "!hum", "!tap", "it", "on"]), max_size=8)


@st.composite
def books(draw: st.DrawFn) -> Phrasebook:
    """Draw the book of a shop."""
    return make_phrasebook(draw(ROWS), draw(ROWS), draw(st.lists(TEXTS, max_size=2)))


def reads(tokens: Sequence[str], phrase: BookPhrase, *, negated: bool) -> int:
    """Return how many tokens a phrase takes up: its own, and a few stop words between them."""
    for more in range((GAP if phrase.terms else 0) + 1):
        span = tokens[: len(phrase.tokens) + more]
        for out in combinations(range(1, len(span)), more):
            kept = [token for at, token in enumerate(span) if at not in out]
            plain = tuple(map(without_no, kept)) if negated else tuple(kept)
            if plain == phrase.tokens and all(span[at] in STOP_WORDS for at in out):
                return len(span)
    return 0


def read(tokens: Sequence[str], book: Phrasebook) -> list[tuple[Tokens, ...]]:
    """Return the wordings of each concept. Reference: at each place, the longest phrase that is."""
    every = [phrase for each in book.starts.values() for phrase in each]
    every.sort(key=lambda phrase: (-len(phrase.tokens), phrase.tokens))
    found, at = [], 0
    while at < len(tokens):
        long, terms = 1, ()
        for phrase, negated in product(every, (False, True)):
            taken = reads(tokens[at:], phrase, negated=negated)
            if taken:
                said = [((opposite(first), *rest) if negated else (first, *rest))
                        for first, *rest in phrase.terms]  # fmt: skip
                long, terms = taken, tuple(said)
                break
        wordings = (drop_stop_words(tokens[at : at + long]), *terms)
        found.append(tuple(dict.fromkeys(words for words in wordings if words)))
        at += long
    return [wordings for wordings in dict.fromkeys(found) if wordings]


@given(tokens=TOKENS, book=books())
@settings(max_examples=60)
def test_at_each_place_the_longest_phrase_counts(tokens: list[str], book: Phrasebook) -> None:
    """With a few stop words inside, with its "no" or under one; what is left stands by itself."""
    concepts = find_concepts(tokens, book)
    assert [concept.alternatives for concept in concepts] == read(tokens, book)
    assert [concept.words for concept in concepts] == [
        len(concept.alternatives[0]) for concept in concepts
    ]
