"""How sure the search is, worked out by hand."""

import pytest

from builder.find.coverage import measure_coverage
from builder.find.phrasebook import find_concepts, shop_tokens
from builder.find.search_table import SearchTable, TreeRow
from builder.find.strength import strength
from builder.find.symptom_index import build_symptom_index
from builder.find.word_forms import split_words

TREES = ("Horn quiet", "Engine cold", "Engine hot")
RAREST = 139  # 100 ln(1 + 3 / 1), which one of three trees has
COMMON = 92  # 100 ln(1 + 3 / 2)


def points(query: str, tree: int) -> int:
    """Return the strength of a tree, of three that have nothing but a title."""
    rows = tuple(TreeRow(title, title, -1, (), (), (), (), False) for title in TREES)
    table = SearchTable(
        (), (), (), (), (), (), rows, (), frozenset(), ("horn", "wiper"), ("rattle",)
    )
    index = build_symptom_index(table)
    concepts = find_concepts(shop_tokens(split_words(query), index.book.synonyms), index.book)
    return strength(measure_coverage(concepts, index), tree, len(rows))


@pytest.mark.parametrize(
    ("query", "tree", "expected"),
    [
        # share 100, whole phrase 125, evidence 250 % (the most) 312, title 2 * 60 + 60; 165 + 150
        ("horn quiet", 0, 100 + 125 + 2 * 125 + 180 - 315),
        # share 100, half the phrase 62, evidence 100 % 125, title 60 + 60; 165 + 150, one word 40
        ("horn", 0, 100 + 62 + 125 + 120 - 275),
        # no subject: share 100, half the phrase 62, evidence 92 * 100 // 139 % 82, title; 165 - 40
        ("engine", 1, 100 + 62 + COMMON * 100 // RAREST * 125 // 100 + 120 - 125),
        # the horn is another tree's: 150 for naming one, 20 for each missing, 115 in a short query
        ("horn engine", 1, 50 + 62 + COMMON * 100 // RAREST * 125 // 100 + 60 - 165 - 285),
        # a word that nobody knows takes 65 from a short query: share 100 of 120
        ("engine zorp", 1, 83 + 62 + COMMON * 100 // RAREST * 125 // 100 + 60 - 165 - 65),
        # a complaint that it hasn't: 50 for naming one, 55 as it has none
        ("engine rattle", 1, 50 + 62 + COMMON * 100 // RAREST * 125 // 100 + 60 - 165 - 105),
        # no phrase covers anything
        ("wiper", 0, -165),
    ],
)
def test_points_add_up(query: str, tree: int, expected: int) -> None:
    """What speaks for a tree, less what is asked of it."""
    assert points(query, tree) == expected


def test_more_that_it_has_is_never_less_sure() -> None:
    """A word that the title has adds to a query; one that it hasn't takes away."""
    assert points("horn quiet", 0) > points("horn", 0) > points("horn wiper", 0)
