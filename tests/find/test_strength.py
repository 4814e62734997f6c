"""How sure the search is, worked out by hand."""

import pytest

from builder.find.coverage import measure_coverage
from builder.find.phrasebook import find_concepts, shop_tokens
from builder.find.search_table import SearchTable, TreeRow
from builder.find.strength import strength
from builder.find.symptom_index import build_symptom_index
from builder.find.trade_words import TradeWords
from builder.find.word_forms import split_words

TREES = (("Horn quiet", ()), ("Engine cold", ()), ("Engine hot", ("steam rises",)))
RAREST = 139  # 100 ln(1 + 3 / 1), which one of three trees has
COMMON = 92  # 100 ln(1 + 3 / 2)


def points(query: str, tree: int) -> int:
    """Return the strength of a tree, of three that have a title, and one other words."""
    rows = tuple(TreeRow(title, title, -1, (), (), words, (), False) for title, words in TREES)
    trade = TradeWords(("horn", "wiper"), ("sunroof",), ("rattle",), ("price",))
    table = SearchTable((), (), (), (), (), (), rows, (), frozenset(), trade)
    index = build_symptom_index(table)
    concepts = find_concepts(shop_tokens(split_words(query), index.book.synonyms), index.book)
    return strength(measure_coverage(concepts, index), tree, len(rows))


@pytest.mark.parametrize(
    ("query", "tree", "expected"),
    [
        # share 100, whole phrase 80, evidence 275 % (two with a tenth on top) of 44, whole title
        # 40; 135, a subject 48
        ("horn quiet", 0, 100 + 80 + 200 * 44 // 100 + 40 - 183),
        # share 100, half the phrase 40, evidence 100 %, whole title 40; 135, a subject 48, one
        # word 120 less
        ("horn", 0, 100 + 40 + 44 + 40 - 183 + 120),
        # no subject: evidence 92 * 100 // 139 %
        ("engine", 1, 100 + 40 + COMMON * 100 // RAREST * 44 // 100 + 40 - 135 + 120),
        # the horn is another tree's: 48 for naming one, 40 in a short query
        ("horn engine", 1, 50 + 40 + COMMON * 100 // RAREST * 44 // 100 - 135 - 48 - 40),
        # nobody names a sunroof in passing: 60 more
        ("sunroof engine", 1, 50 + 40 + COMMON * 100 // RAREST * 44 // 100 - 135 - 48 - 40 - 60),
        # an unknown word takes 24 from a short query: share 100 of 120
        ("engine zorp", 1, 83 + 40 + COMMON * 100 // RAREST * 44 // 100 - 135 - 24),
        # a complaint that it hasn't: 40
        ("engine rattle", 1, 50 + 40 + COMMON * 100 // RAREST * 44 // 100 - 135 - 40),
        # a price is no complaint: 115; share 100 of 130
        ("engine price", 1, 76 + 40 + COMMON * 100 // RAREST * 44 // 100 + 40 - 135 - 115),
        # all of it in other words than the title's: 56 more in a short query
        ("steam rises", 2, 100 + 80 + 200 * 44 // 100 - 135 - 56),
        # no phrase covers anything
        ("wiper", 0, -135),
    ],
)
def test_points_add_up(query: str, tree: int, expected: int) -> None:
    """What speaks for a tree, less what is asked of it."""
    assert points(query, tree) == expected


def test_more_that_it_has_is_never_less_sure() -> None:
    """A word that it has adds to a query; one that it hasn't takes away."""
    assert points("horn quiet", 0) > points("horn quiet wiper", 0) > points("horn sunroof wiper", 0)
