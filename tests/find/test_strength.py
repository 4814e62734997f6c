"""How sure the search is, worked out by hand."""

from collections.abc import Sequence

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


def points(query: str, tree: int, trees: Sequence[str] = TREES) -> int:
    """Return the strength of a tree, of three that have nothing but a title."""
    rows = tuple(TreeRow(title, title, -1, (), (), (), (), False) for title in trees)
    trade = TradeWords(("horn", "wiper"), ("sunroof",), ("rattle",), ("price",))
    table = SearchTable((), (), (), (), (), (), rows, (), frozenset({"good"}), trade)
    index = build_symptom_index(table)
    concepts = find_concepts(shop_tokens(split_words(query), index.book.synonyms), index.book)
    return strength(measure_coverage(concepts, index), tree, len(rows))


@pytest.mark.parametrize(
    ("query", "tree", "expected"),
    [
        # two words 17 each, and 27 in the title; fit and phrase 100 %; evidence 200 % of 48; two
        # things ask 47 less
        ("horn quiet", 0, 34 + 54 + 68 + 55 + 96 - 242 + 47),
        # half of the phrase is there: fit 66 %; evidence 100 %; one thing is a look around: 94
        # less, and 44 as if no part were named
        ("horn", 0, 17 + 27 + 66 * 68 // 100 + 27 + 48 - 242 + 94 + 44),
        # two trees say it: evidence 92 * 100 // 139 %
        ("engine", 1, 17 + 27 + 44 + 27 + COMMON * 100 // RAREST * 48 // 100 - 242 + 94 + 44),
        # nobody names a sunroof in passing: 52; fit 43 %
        ("sunroof engine", 1, 17 + 27 + 43 * 68 // 100 + 27 + 31 - 242 + 47 - 52),
        # a price is no complaint: 29; fit 57 %
        ("engine price", 1, 17 + 27 + 57 * 68 // 100 + 27 + 31 - 242 + 47 + 44 - 29),
        # an everyday word stands for a story: 12; fit 91 %, evidence 166 %
        ("the engine good cold", 1, 34 + 54 + 91 * 68 // 100 + 55 + 79 + 12 - 242 + 44),
        # of three things one is a part; fit 32 %, evidence 66 %
        ("wiper engine rattle", 1, 17 + 27 + 32 * 68 // 100 + 27 + 31 - 242),
        # no phrase covers anything
        ("wiper", 0, -242),
    ],
)
def test_points_add_up(query: str, tree: int, expected: int) -> None:
    """What speaks for a tree, less what is asked of it."""
    assert points(query, tree) == expected


def test_a_lone_part_that_it_has_is_not_missing() -> None:
    """A tree of the sunroof is as sure of it as one of the horn is of the horn."""
    trees = ("Horn quiet", "Sunroof stuck", "Engine hot")
    assert points("sunroof stuck", 1, trees) == points("horn quiet", 0, trees)


def test_more_that_it_has_is_never_less_sure() -> None:
    """A word that it has adds to a query; one that it hasn't takes away."""
    assert points("horn quiet", 0) > points("horn quiet wiper", 0) > points("horn sunroof wiper", 0)


def test_a_title_counts_three_times_at_most() -> None:
    """Four words of it, each the rarest there is: 17 each, 27 three times, evidence 400 %."""
    trees = ("Horn quiet slow weak", "Engine cold", "Engine hot")
    assert points("horn quiet slow weak", 0, trees) == 4 * 17 + 3 * 27 + 68 + 55 + 4 * 48 - 242
