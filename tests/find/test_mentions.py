"""What a query names, and where an entry has it."""

from builder.find.concept_kinds import SUBJECT
from builder.find.coverage import measure_coverage
from builder.find.covered_concepts import CoveredConcept
from builder.find.mentions import Mentions, count_mentions
from builder.find.phrasebook import Concept
from builder.find.search_table import SearchTable, TreeRow
from builder.find.symptom_index import build_symptom_index
from builder.find.trade_words import TradeWords


def mentions_of(*concepts: Concept) -> Mentions:
    """Return what two trees mention of a query."""
    trees = (("Horn", "belt knob"), ("Belt", "head lamp"))
    rows = tuple(TreeRow(title, title, -1, (), (), (words,), (), False) for title, words in trees)
    trade = TradeWords(("belt",), ("sunroof",), (), ("price",))
    index = build_symptom_index(SearchTable((), (), (), (), (), (), rows, (), frozenset(), trade))
    return measure_coverage(concepts, index).mentions


def test_a_thing_named_by_two_words_is_two_words_said() -> None:
    """`Head lamp` is one thing and tells as much as two."""
    found = mentions_of(Concept((("belt",),)), Concept((("head", "lamp"),), words=2))
    assert found.said == {0: 1, 1: 3}


def test_a_part_that_no_tree_has_is_named_and_missing() -> None:
    """A lone subject that an entry hasn't speaks against it; a price is an errand."""
    found = mentions_of(Concept((("sunroof",),)), Concept((("belt",),)), Concept((("pric",),)))
    assert found.named["lone"] == 1
    assert found.has["lone"] == {}
    assert (found.errands, found.brevity) == (1, 0)


def test_a_code_that_no_tree_lists_is_a_part_that_none_has() -> None:
    """Each is as if a sunroof were named."""
    found = count_mentions([], unlisted=2)
    assert (found.named["lone"], found.has["lone"], found.brevity) == (2, {}, 0)


def test_an_entry_has_what_it_says_more_than_a_part_of() -> None:
    """More than 40 percent of a part; and more than half of what its title or a word counts."""
    said = {0: 40, 1: 41, 2: 50, 3: 51}
    found = count_mentions([CoveredConcept(2, SUBJECT, 0, {}, said, said, said)], unlisted=0)
    assert found.has[SUBJECT] == {1: 1, 2: 1, 3: 1}
    assert found.in_title == found.subjects_in_title == {3: 1}
    assert found.said == {3: 2}


def test_the_title_counts_what_it_names() -> None:
    """Of two trees that say the belt, one has it in its title, and it is a subject."""
    found = mentions_of(Concept((("belt",),)))
    assert found.in_title == found.subjects_in_title == {1: 1}
    assert found.brevity == 2
