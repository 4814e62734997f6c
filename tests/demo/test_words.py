"""The words of the demo: enough of them, and none that leads in a ring."""

from builder.find.phrasebook import make_phrasebook
from builder.find.search_table import WordRow
from builder.find.word_forms import drop_stop_words
from builder.model.library import Library


def test_the_demo_has_words_enough(library: Library) -> None:
    """At least 100 pairs of slang and proper term, each with a term that is not the slang."""
    assert len(library.words) >= 100
    for word in (*library.words.values(), *library.same_words.values()):
        assert word.terms
        assert all(str(term).lower() != str(word.slang).lower() for term in word.terms), word.slang


def test_a_word_leads_to_a_word_that_leads_nowhere_else(library: Library) -> None:
    """The right side of a plain word is final, or a search would depend on how often it is done."""
    rows = [
        WordRow(str(word.slang), tuple(map(str, word.terms)))
        for word in library.same_words.values()
    ]
    book = make_phrasebook([], rows)
    assert book.synonyms
    for token, terms in book.synonyms.items():
        assert (token,) != terms, token
        again = [word for term in terms for word in book.synonyms.get(term, (term,))]
        assert drop_stop_words(again) == terms, token
