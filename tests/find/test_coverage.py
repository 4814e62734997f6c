"""How much of a query an entry covers, worked out by hand from small tables."""

from itertools import chain

import pytest

from builder.find.concept_kinds import KIND_WEIGHTS
from builder.find.coverage import measure_coverage
from builder.find.covered_concepts import kind_of, rarity
from builder.find.phrasebook import Concept
from builder.find.search_table import SearchTable, TreeRow
from builder.find.symptom_index import SymptomIndex, build_symptom_index
from builder.find.trade_words import TRADE_WORDS, TradeWords
from builder.find.word_forms import stem_word


def index_of(*titles: str) -> SymptomIndex:
    """Index trees that have nothing but a title."""
    trees = tuple(TreeRow(title, title, -1, (), (), (), (), False) for title in titles)
    return build_symptom_index(
        SearchTable((), (), (), (), (), (), trees, (), everyday=frozenset({"good", "things"}))
    )


@pytest.mark.parametrize(
    ("wordings", "percent"),
    [
        ((("good",),), 30),
        ((("!good",),), 30),
        ((("crank",),), 100),
        ((("good", "thing"),), 100),
        ((("good",), ("crank",)), 100),
        ((("!belt",),), 100),
        ((("pric",),), 30),
        ((("zorp",),), 20),
    ],
)
def test_an_everyday_word_or_an_errand_counts_less(
    wordings: tuple[tuple[str, ...], ...], percent: int
) -> None:
    """In a phrase, or with a meaning of the shop, it counts as what trees say; unknown is least."""
    index = index_of("No crank", "A good thing", "Belt")
    assert KIND_WEIGHTS[kind_of(Concept(wordings), index)] == percent


def test_what_it_is_about_and_what_it_does_count_the_same() -> None:
    """A part, one that is the subject wherever it is named, a complaint, and any word of a tree."""
    trade = TradeWords(("horn",), ("sunroof",), ("rattle",), ())
    titles = ("horn", "sunroof", "rattle", "gizmo")
    rows = tuple(TreeRow(title, title, -1, (), (), (), (), False) for title in titles)
    index = build_symptom_index(SearchTable((), (), (), (), (), (), rows, (), frozenset(), trade))
    found = measure_coverage([Concept(((stem_word(title),),)) for title in titles], index)
    assert [found.share(tree) for tree in range(4)] == [25] * 4


def test_the_opposite_counts_a_quarter() -> None:
    """`no crank` finds `crank`, at half its credit squared; the same words count in full."""
    found = measure_coverage([Concept((("!crank",),))], index_of("No crank", "Crank"))
    assert found.credit == {0: 100 * 100, 1: 25 * 100}
    assert (found.share(0), found.share(1)) == (100, 25)


def test_a_phrase_that_is_there_in_part_counts_the_square_of_it() -> None:
    """One of two words is a quarter; the best of the wordings counts."""
    concept = Concept((("front", "belt"), ("knob", "hand", "belt", "rear")), words=2)
    found = measure_coverage([concept], index_of("front", "belt", "knob hand belt", "rear"))
    assert found.credit == {0: 25 * 2 * 100, 1: 25 * 2 * 100, 2: 56 * 2 * 100, 3: 6 * 2 * 100}


@pytest.mark.parametrize(
    ("entries", "having", "expected"), [(8, 1, 220), (8, 0, 220), (3, 2, 92), (9, 9, 69)]
)
def test_what_few_entries_have_tells_more(entries: int, having: int, expected: int) -> None:
    """100 ln(1 + entries / those that have it), rounded; what none has tells no more than that."""
    assert rarity(entries, having) == expected


WORDS = ["front", "belt", "knob", "hand", "rear", "door", "seat", "lamp", "horn", "pump", "plug"]


@pytest.mark.parametrize(
    ("whole", "there", "credit", "having"), [(11, 8, 51, 2), (7, 5, 50, 1), (11, 7, 39, 1)]
)
def test_an_entry_has_a_concept_if_it_covers_more_than_half_of_it(
    whole: int, there: int, credit: int, having: int
) -> None:
    """What many entries have is less rare: eight of eleven words count so, seven do not."""
    words = WORDS[:whole]
    index = index_of(" ".join(words), " ".join(words[:there]), "Crank")
    found = measure_coverage([Concept((tuple(words),), words=whole)], index)
    assert found.gain == {0: 100 * rarity(3, having), 1: credit * rarity(3, having)}


def test_what_a_tree_says_again_and_again_is_what_it_is_about() -> None:
    """Each phrase more that has it adds a tenth, up to three of them; no share grows with it."""
    said = [("crank",) * more for more in range(5)]
    trees = tuple(
        TreeRow(str(at), "crank", -1, (), (), words, (), False) for at, words in enumerate(said)
    )
    index = build_symptom_index(SearchTable((), (), (), (), (), (), trees, ()))
    found = measure_coverage([Concept((("crank",),))], index)
    assert found.gain == {at: rarity(5, 5) * (100 + 10 * min(at, 3)) for at in range(5)}
    assert set(found.credit.values()) == {100 * 100}


def test_a_phrase_that_covers_next_to_nothing_fits_by_nothing() -> None:
    """One word of eleven is less than a hundredth of the query and of the phrase."""
    index = index_of(WORDS[0], "Crank")
    found = measure_coverage([Concept((tuple(WORDS),), words=len(WORDS))], index)
    assert found.fit(0) == 0


def test_of_a_query_without_words_nothing_is_covered() -> None:
    """A tree found by its code alone covers no share of words that nobody typed."""
    assert measure_coverage([], index_of("No crank")).share(0) == 0


def test_a_word_of_the_trade_is_of_one_kind() -> None:
    """The first list that has it would win, and the other say nothing."""
    words = list(chain.from_iterable(TRADE_WORDS))
    assert sorted(words) == sorted(set(words))
