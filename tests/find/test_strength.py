"""How sure the search is, worked out by hand."""

import pytest

from builder.find.coverage import measure_coverage
from builder.find.phrasebook import find_concepts, shop_tokens
from builder.find.search_table import SearchTable, TreeRow
from builder.find.strength import strength
from builder.find.symptom_index import build_symptom_index
from builder.find.trade_words import TradeWords
from builder.find.word_forms import split_words

TREES = ("Horn quiet", "Engine cold", "Engine hot")
RAREST = 139  # 100 ln(1 + 3 / 1), which one of three trees has
COMMON = 92  # 100 ln(1 + 3 / 2)


def points(query: str, tree: int) -> int:
    """Return the strength of a tree, of three that have nothing but a title."""
    rows = tuple(TreeRow(title, title, -1, (), (), (), (), False) for title in TREES)
    trade = TradeWords(("horn", "wiper"), ("sunroof",), ("rattle",), ("price",))
    table = SearchTable((), (), (), (), (), (), rows, (), frozenset({"good"}), trade)
    index = build_symptom_index(table)
    concepts = find_concepts(shop_tokens(split_words(query), index.book.synonyms), index.book)
    return strength(measure_coverage(concepts, index), tree, len(rows))


@pytest.mark.parametrize(
    ("query", "tree", "expected"),
    [
        # two words 25 each; best phrase fits 100 %; evidence 200 % of 29; two things ask 40 less
        ("horn quiet", 0, 50 + 154 + 58 - 217 + 40),
        # half of the phrase is there: fit 66 %; evidence 100 %; one thing is a look around: 80 less
        ("horn", 0, 25 + 66 * 154 // 100 + 29 - 217 + 80),
        # two trees say it: evidence 92 * 100 // 139 %
        ("engine", 1, 25 + 66 * 154 // 100 + COMMON * 100 // RAREST * 29 // 100 - 217 + 80),
        # nobody names a sunroof in passing: 53; fit 43 %
        ("sunroof engine", 1, 25 + 43 * 154 // 100 + 19 - 217 + 40 - 53),
        # a price is no complaint: 34; fit 57 %
        ("engine price", 1, 25 + 57 * 154 // 100 + 19 - 217 + 40 - 34),
        # an everyday word stands for a story: 9; fit 94 %, evidence 166 %
        ("the engine good cold", 1, 50 + 94 * 154 // 100 + 44 + 9 - 217),
        # no phrase covers anything
        ("wiper", 0, -217),
    ],
)
def test_points_add_up(query: str, tree: int, expected: int) -> None:
    """What speaks for a tree, less what is asked of it."""
    assert points(query, tree) == expected


def test_more_that_it_has_is_never_less_sure() -> None:
    """A word that it has adds to a query; one that it hasn't takes away."""
    assert points("horn quiet", 0) > points("horn quiet wiper", 0) > points("horn sunroof wiper", 0)
