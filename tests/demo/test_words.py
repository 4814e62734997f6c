"""The words of the demo: enough of them, and none that leads in a ring."""

from builder.find.phrasebook import phrasebook
from builder.find.words import content
from builder.model.library import Library


def test_the_demo_has_words_enough(library: Library) -> None:
    """At least 150 pairs of slang and proper term, each with a term that is not the slang."""
    assert len(library.words) >= 150
    for word in (*library.words.values(), *library.same_words.values()):
        assert word.terms
        assert all(str(term).lower() != str(word.slang).lower() for term in word.terms), word.slang


def test_a_word_leads_to_a_word_that_leads_nowhere_else(library: Library) -> None:
    """The right side of a plain word is final, or a search would depend on how often it is done."""
    pairs = [(str(word.slang), tuple(map(str, word.terms)))
             for word in library.same_words.values()]  # fmt: skip
    book = phrasebook([], pairs)
    for token, meant in book.same.items():
        assert (token,) != meant, token
        again = [word for found in meant for word in book.same.get(found, (found,))]
        assert content(dict.fromkeys(again)) == list(meant), token
