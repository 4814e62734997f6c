"""What a query names, and where an entry has it."""

from builder.find.coverage import measure_coverage
from builder.find.mentions import SHORT_QUERY
from builder.find.phrasebook import Concept
from builder.find.search_table import SearchTable, TreeRow
from builder.find.strength import SHORT_UNTITLED, strength
from builder.find.symptom_index import SymptomIndex, build_symptom_index

WORDS = ("belt", "knob", "lamp", "seat", "pump")


def index_of(*trees: tuple[str, str]) -> SymptomIndex:
    """Index trees by their title and one symptom."""
    rows = tuple(TreeRow(title, title, -1, (), (), (words,), (), False) for title, words in trees)
    return build_symptom_index(SearchTable((), (), (), (), (), (), rows, ()))


def test_four_things_are_a_short_query_and_five_a_story() -> None:
    """A short one is about all that it names; in a story other parts are blamed and passed."""
    concepts = [Concept(((word,),)) for word in WORDS]
    assert len(WORDS) == SHORT_QUERY + 1 == 5
    index = index_of(("Belt", "knob"))
    assert measure_coverage(concepts[:4], index).mentions.is_short
    assert not measure_coverage(concepts, index).mentions.is_short


def test_a_short_query_asks_more_of_a_tree_whose_title_has_nothing_of_it() -> None:
    """A tree that only mentions both words is less sure than one with one of them in its title."""
    index = index_of(("Horn", "belt knob"), ("Belt", "belt knob"))
    found = measure_coverage([Concept(((word,),)) for word in WORDS[:2]], index)
    assert found.share(0) == found.share(1) == 100
    evidence = strength(found, 1, 2) - strength(found, 0, 2)
    assert evidence >= SHORT_UNTITLED
