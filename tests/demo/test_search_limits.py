"""What the search says of complaints that the demo has no tree for, and of stories told badly."""

from pathlib import Path

import pytest
import yaml

from builder.find.ranking import answer_query
from builder.find.search_table import search_table
from builder.find.symptom_index import SymptomIndex, build_symptom_index
from builder.model.library import Library

HERE = Path(__file__).parent
ROWS = yaml.safe_load((HERE / "queries-uncovered.yml").read_text())
HAS: dict[str, str] = {row["query"]: row["has"] for row in ROWS if isinstance(row, dict)}
UNCOVERED: list[str] = [row["query"] if isinstance(row, dict) else row for row in ROWS]
DANGER: list[str] = yaml.safe_load((HERE / "queries-danger.yml").read_text())
STORIES = yaml.safe_load((HERE / "queries-stories.yml").read_text())
TUNED = yaml.safe_load((HERE / "queries-tuned.yml").read_text())
TOLD = {
    "apart": {tree: [case["query"] for case in cases] for tree, cases in STORIES.items()},
    "tuned": TUNED["stories"],
}


@pytest.fixture(scope="module")
def index(library: Library) -> SymptomIndex:
    """Return the index of the demo."""
    return build_symptom_index(search_table(library))


def test_the_sets_are_large() -> None:
    """60 complaints that no tree covers, 40 about danger, 80 stories and more."""
    assert (len(set(UNCOVERED)), len(set(DANGER))) == (60, 40)
    assert sum(map(len, STORIES.values())) >= 80
    assert [len(TUNED[kind]) for kind in ("uncovered", "danger", "calm")] == [50, 60, 40]
    assert sum(map(len, TUNED["stories"].values())) == 30


@pytest.mark.parametrize("asked", [UNCOVERED, TUNED["uncovered"]], ids=["apart", "tuned"])
def test_no_tree_is_offered_where_the_shop_has_none(index: SymptomIndex, asked: list[str]) -> None:
    """In 95 % of the complaints without a tree, no hit is a tree."""
    offered = {
        query: hits[0].id
        for query in asked
        if (hits := [hit for hit in answer_query(index, query).hits if hit.kind == "tree"])
        and hits[0].id != HAS.get(query)
    }
    assert len(offered) <= 0.05 * len(asked), offered


def test_ordinary_complaints_raise_no_alarm(index: SymptomIndex) -> None:
    """None of them shows a safety line, whatever words of danger stand in it."""
    asked = [*UNCOVERED, *TUNED["uncovered"], *TUNED["calm"]]
    assert [query for query in asked if answer_query(index, query).safety] == []


def test_danger_shows_the_safety_line(index: SymptomIndex) -> None:
    """Each query about danger shows one, typed with or without the last blank."""
    asked = [query + end for query in (*DANGER, *TUNED["danger"]) for end in ("", " ")]
    assert [query for query in asked if not answer_query(index, query).safety] == []


@pytest.mark.parametrize("name", TOLD)
def test_a_story_finds_its_tree(library: Library, index: SymptomIndex, name: str) -> None:
    """85 % of the stories find their tree first, 95 % among the first three."""
    assert TOLD[name].keys() - library.trees.keys() == set()
    places = {
        query: place(tree, [hit.id for hit in answer_query(index, query).hits])
        for tree, queries in TOLD[name].items()
        for query in queries
    }
    missed = {query: at for query, at in places.items() if at > 3}
    assert sum(at == 1 for at in places.values()) >= 0.85 * len(places), places
    assert len(missed) <= 0.05 * len(places), missed


def place(tree: str, found: list[str]) -> int:
    """Return where a tree stands, from 1; 99 if it was not found."""
    return found.index(tree) + 1 if tree in found else 99
