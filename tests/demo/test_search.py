"""How well the search does over the demo, by a query set written before it and one apart."""

from collections import Counter
from pathlib import Path

import pytest
import yaml

from builder.find.ranking import answer_query
from builder.find.search_table import search_table
from builder.find.symptom_index import build_symptom_index
from builder.model.library import Library

HERE = Path(__file__).parent
QUERIES = yaml.safe_load((HERE / "queries.yml").read_text())
APART = yaml.safe_load((HERE / "queries-apart.yml").read_text())
ASKED = {
    "before": {tree: [case["query"] for case in cases] for tree, cases in QUERIES.items()},
    "apart": APART,
}


def test_the_set_is_large_and_varied() -> None:
    """At least 120 queries, of every kind, some for each tree."""
    kinds = Counter(case["kind"] for cases in QUERIES.values() for case in cases)
    assert kinds.total() >= 120
    assert {"plain", "paraphrase", "slang", "typo", "code", "wrong words"} == set(kinds)
    assert min(map(len, QUERIES.values())) >= 4


@pytest.mark.parametrize("name", ASKED)
def test_a_query_asks_for_a_tree_that_is_there(library: Library, name: str) -> None:
    """A tree that was renamed takes its queries along."""
    assert ASKED[name].keys() - library.trees.keys() == set()


@pytest.mark.parametrize("name", ASKED)
def test_the_right_tree_comes_first(library: Library, name: str) -> None:
    """85 % of the queries find their tree first, 97 % among the first three."""
    index = build_symptom_index(search_table(library))
    places = {
        query: place(tree, [hit.id for hit in answer_query(index, query).hits])
        for tree, queries in ASKED[name].items()
        for query in queries
    }
    missed = {query: found for query, found in places.items() if found > 3}
    assert sum(found == 1 for found in places.values()) >= 0.85 * len(places), places
    assert len(missed) <= 0.03 * len(places), missed


def place(tree: str, found: list[str]) -> int:
    """Return where a tree stands, from 1; 99 if it was not found."""
    return found.index(tree) + 1 if tree in found else 99
