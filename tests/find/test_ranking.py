"""What the search finds and understands, on the command line and on the page alike."""

import dataclasses
import json
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.find import ranking
from builder.find.ranking import ScoredEntry, SearchAnswer, answer_query
from builder.find.search_query import parse_query, query_concepts
from builder.find.search_table import CodeRow, SearchTable, TreeRow, VehicleRow
from builder.find.symptom_index import SymptomIndex, build_symptom_index
from builder.find.trade_words import TradeWords
from builder.model.library import Library

HERE = Path(__file__).parent
CASES = yaml.safe_load((HERE / "cases.yml").read_text())


@pytest.mark.parametrize("case", CASES, ids=lambda case: repr(case["query"]))
def test_the_table_of_cases_holds(case: dict[str, Any], small_index: SymptomIndex) -> None:
    """Each query of cases.yml finds and understands what stands beside it."""
    answer = answer_query(small_index, case["query"])
    ids = [hit.id for hit in answer.hits]
    said = answer.understood
    facts = {
        "first": ids[0] if ids else None,
        "hits": ids,
        "codes": [code for code, _ in said.codes],
        "corrected": dict(said.corrected),
        "slang": [phrase for phrase, _ in said.slang],
        "unknown": list(said.unknown),
        "make": " ".join(said.vehicle.make),
        "vehicle": " ".join(said.vehicle.model),
        "years": list(said.vehicle.years),
        "number": said.vehicle.number_check,
        "others": said.other_vehicles,
        "nearest": [hit.id for hit in answer.nearest],
        "safety": len(answer.safety),
        "trees": answer.trees,
    }
    for fact in facts.keys() & case.keys():
        assert facts[fact] == case[fact], fact
    assert set(case.get("among", ())) <= set(ids)
    assert not set(case.get("not", ())) & set(ids)


@pytest.mark.parametrize(
    ("scored", "kept"),
    [
        # an eighth of the best score itself is kept
        ([(800, 100), (100, 100), (99, 100), (0, 100)], [800, 100]),
        # so is a fourth of the best strength
        ([(800, 100), (700, 25), (600, 24)], [800, 700]),
        # what isn't strong is no hit, and no measure for others
        ([(800, 0), (40, 50), (30, -10)], [40]),
        # the least that is above 0 is strong
        ([(40, 1)], [40]),
    ],
)
def test_weak_hits_are_left_out(
    scored: list[tuple[int, int]],
    kept: list[int],
    small_index: SymptomIndex,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Score and strength of these trees come in place of those of the words."""
    entries = [
        ScoredEntry(at, score, -1, 0, strength) for at, (score, strength) in enumerate(scored)
    ]
    monkeypatch.setattr(ranking, "_score_entries", lambda *_: entries)
    answer = answer_query(small_index, "crank")
    assert [hit.score for hit in answer.hits] == kept


def test_no_article_stands_above_the_best_tree(
    small_index: SymptomIndex, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It counts no more than that tree; where no tree is found, it counts in full."""
    tree, article = (ScoredEntry(at, score, -1, 0, 100) for at, score in ((0, 400), (8, 900)))
    for entries, hits in (
        ([tree, article], [("tree", 400), ("article", 400)]),
        ([article], [("article", 900)]),
    ):
        monkeypatch.setattr(ranking, "_score_entries", lambda *_, found=entries: found)
        answer = answer_query(small_index, "crank")
        assert [(hit.kind, hit.score) for hit in answer.hits] == hits


@pytest.mark.parametrize(
    ("meaning", "found"),
    [
        ("Horn relay fuse rattle", ["Horn relay fuse quiet"]),
        ("Horn relay fuse sunroof quiet", []),  # one part is another tree's
        ("Sunroof motor", ["Sunroof motor rattle"]),
        ("Rattle", ["Sunroof motor rattle"]),  # no part, but what it does
        ("Engine belt", []),  # neither
    ],
)
def test_a_code_that_no_tree_lists_finds_those_with_all_its_parts(
    meaning: str, found: list[str]
) -> None:
    """Where its meaning names no part, those that do what it says; where not even that, none."""
    titles = ("Horn relay fuse quiet", "Sunroof motor rattle", "Engine belt", "Lamp")
    trees = tuple(TreeRow(title, title, -1, (), (), (), (), False) for title in titles)
    trade = TradeWords(("horn", "relay", "fuse"), ("sunroof",), ("quiet", "rattle"), ())
    codes = (CodeRow("P1999", meaning),)
    table = SearchTable((), (), (), (), (), codes, trees, (), frozenset(), trade)
    answer = answer_query(build_symptom_index(table), "P1999")
    assert [hit.id for hit in answer.hits] == found


def test_all_strong_trees_are_counted_and_the_best_shown() -> None:
    """Fourteen trees of one vehicle: fourteen counted, twelve shown, all of them alike."""
    vehicle = VehicleRow("Corvane", "Tern", 2017, 2022)
    names = [f"fault {letter}" for letter in "abcdefghijklmn"]
    trees = tuple(TreeRow(name, name, -1, (), (), (), (0,), False) for name in names)
    table = SearchTable((), (), (vehicle,), (), (), (), trees, ())
    answer = answer_query(build_symptom_index(table), "corvane tern 2017")
    assert (answer.trees, len(answer.hits)) == (14, 12)
    assert {(hit.score, hit.share, hit.phrase) for hit in answer.hits} == {(1, 0, "")}


def test_a_beginning_stands_for_the_most_used_word_that_begins_so() -> None:
    """The shop writes `regulator` twice and `regulating` once."""
    titles = ("regulator belt", "regulating lamp", "regulator noise")
    trees = tuple(TreeRow(title, title, -1, (), (), (), (), False) for title in titles)
    index = build_symptom_index(SearchTable((), (), (), (), (), (), trees, ()))
    answer = answer_query(index, "regul ")
    assert answer.understood.corrected == (("regul", "regulator"),)


def as_page(answer: SearchAnswer) -> dict[str, Any]:
    """Write an answer as the page's script does."""
    made: dict[str, Any] = json.loads(json.dumps(dataclasses.asdict(answer)))
    said = made["understood"]
    said["otherVehicles"] = said.pop("other_vehicles")
    said["vehicle"]["numberCheck"] = said["vehicle"].pop("number_check")
    return made


def test_the_page_finds_the_same_in_the_table_of_cases(
    small: SearchTable, small_index: SymptomIndex, page_answers: Any
) -> None:
    """The page's script gives the same answer to each case, down to the scores."""
    queries = [case["query"] for case in CASES]
    for query, found in zip(queries, page_answers(small, queries), strict=True):
        assert found == as_page(answer_query(small_index, query)), query


def test_the_page_finds_the_same_in_a_whole_shop(
    shop: Library, shop_table: SearchTable, page_answers: Any
) -> None:
    """So it does for all that authors wrote of their trees, whole, half typed and finished."""
    index = build_symptom_index(shop_table)
    trees = shop.trees.values()
    written = [str(words) for tree in trees for words in (tree.title, *tree.symptom.words)]
    written += [str(code) for tree in trees for code in tree.symptom.codes]
    queries = [
        *written,
        *(words[: len(words) // 2] for words in written),
        *(words[:3] + words[4:] + " " for words in written),
    ]
    assert len(queries) > 100
    for query, found in zip(queries, page_answers(shop_table, queries), strict=True):
        assert found == as_page(answer_query(index, query)), query


# Words that pull in different directions.
TRICKY = """
no not won't crank cranks start alt light lite U0121 0121-87 2019 fell tern 16V e-brake on and off
battery batery dying overheats set it up brakes xyzzy é % 0ZZAB1DE0S0123456 a/c
"""
WORDS = st.sampled_from(TRICKY.split())


@settings(max_examples=150, deadline=None)
@given(words=st.lists(WORDS, max_size=8), typed=st.text(max_size=6))
def test_any_query_gets_an_answer_in_order(
    words: list[str], typed: str, small_index: SymptomIndex
) -> None:
    """Whatever is typed: no error, best first, no tree twice, no article above the best tree."""
    hits = answer_query(small_index, " ".join([*words, typed])).hits
    scores = [hit.score for hit in hits]
    assert scores == sorted(scores, reverse=True)
    assert all(scores)
    assert len({(hit.kind, hit.id) for hit in hits}) == len(hits)
    kinds = [hit.kind for hit in hits]
    assert "tree" not in kinds or kinds[0] == "tree"


def test_nothing_depends_on_the_order_of_words_that_stand_alone(
    small_index: SymptomIndex,
) -> None:
    """The same words in another order find the same trees with the same scores."""
    one, other = (answer_query(small_index, asked).hits
                  for asked in ("lamp abs brakes ", "abs lamp brakes "))  # fmt: skip
    assert [(hit.id, hit.score) for hit in one] == [(hit.id, hit.score) for hit in other]


def test_an_empty_list_leads_to_trees_of_the_same_subject(small_index: SymptomIndex) -> None:
    """Where no tree fits, one whose title has the part in question is near; else none."""
    near = answer_query(small_index, "brakes squeal in the rain ")
    assert not near.hits
    assert [hit.id for hit in near.nearest] == ["brakes/parking"]
    assert answer_query(small_index, "sunroof leaks ").nearest == ()


def test_two_trees_of_the_same_subject_are_enough() -> None:
    """Where none fits, the nearest are a hint and not another list to read through."""
    titles = ("brakes drag", "brakes pull", "brakes grab")
    trees = tuple(TreeRow(title, title, -1, (), (), (), (), False) for title in titles)
    index = build_symptom_index(SearchTable((), (), (), (), (), (), trees, ()))
    answer = answer_query(index, "brakes squeal in the rain ")
    assert (len(answer.hits), len(answer.nearest)) == (0, 2)


def test_a_word_half_typed_comes_after_the_words_before_it(small_index: SymptomIndex) -> None:
    """What is finished counts as if nothing followed."""
    done, going = (query_concepts(parse_query(asked, small_index), small_index)
                   for asked in ("brakes lamp ", "brakes lamp batt"))  # fmt: skip
    assert done
    assert going[:-1] == done
