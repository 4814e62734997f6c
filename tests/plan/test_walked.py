"""The minutes of trees against the average of random walks.

Reference: `walker.py`, written from the definition of the format, without `builder.plan`. The mean
of many independent walks is nearly normal, so it is within five standard errors of the true mean
in all but one of more than a million trees (central limit theorem; from memory). For 100,000 walks
a tree, run `python tests/bench/walks.py`.
"""

from collections.abc import Mapping
from dataclasses import replace
from math import sqrt
from pathlib import Path
from random import Random
from statistics import fmean, pstdev
from types import MappingProxyType

import pytest

from builder.check.filled_tree import tree_of
from builder.check.unchecked_library import read_library
from builder.model.library import Library
from builder.model.tree import Tree
from builder.plan.minutes import tree_minutes
from builder.plan.procedure_runs import with_procedure_runs
from builder.reader.knowledge_files import read_knowledge
from builder.reader.trees import read_tree, tree_files

from .walker import Walker

SHOP = Path(__file__).parents[1] / "shop"
SAMPLES = Path(__file__).parents[1] / "samples"  # their trees run procedures
CASES = sorted((Path(__file__).parent / "cases").glob("*.yml"))
WALKS = 1_000
ERRORS = 5
# Of the minutes: tries shared by loops of several steps, see `plan/expected_minutes.py`
SHARED = 0.03


def without_states() -> Library:
    """Return the samples without states: the walker counts no change of the vehicle's state."""
    procedures = read_knowledge(SAMPLES)[0].procedures
    library = replace(read_library(SAMPLES)[0], conditions={}, procedures=procedures)
    return with_procedure_runs(library)


def is_as_walked(tree: Tree, procedures: Mapping[str, Tree] = MappingProxyType({})) -> bool:
    """Whether the plan of a tree is close enough to its walks."""
    walker = Walker(tree, Random(tree.id), procedures)
    lengths = [walker.walk() for _ in range(WALKS)]
    plan = float(tree_minutes(tree).expected)
    allowed = ERRORS * pstdev(lengths) / sqrt(WALKS) + SHARED * plan * walker.shares_tries()
    return abs(fmean(lengths) - plan) <= allowed + 1e-9


@pytest.mark.parametrize("path", tree_files(SHOP), ids=lambda path: path.stem)
def test_a_tree_takes_as_long_as_its_walks(path: Path) -> None:
    """A thousand random walks take as long on average as the plan says."""
    tree, _ = read_tree(SHOP, path)
    assert tree is not None
    assert is_as_walked(tree)


@pytest.mark.parametrize("path", CASES, ids=lambda path: path.stem)
def test_a_case_takes_as_long_as_its_walks(path: Path, tree) -> None:
    """Random walks also match the cases calculated by hand."""
    assert is_as_walked(tree(path.read_text("utf-8")))


@pytest.mark.parametrize("path", tree_files(SAMPLES), ids=lambda path: path.stem)
def test_a_tree_takes_as_long_as_its_walks_through_procedures(path: Path) -> None:
    """A step that runs a procedure takes as long as walks through the procedure to that word."""
    library = without_states()
    procedures = {name: one.tree for name, one in library.procedures.items()}
    id_ = path.relative_to(SAMPLES / "trees").with_suffix("").as_posix()
    assert is_as_walked(tree_of(SAMPLES, library, id_), procedures)


@pytest.mark.parametrize("name", sorted(one.stem for one in SAMPLES.glob("kb/procedures/*.yml")))
def test_every_word_takes_as_long_as_its_walks(name: str) -> None:
    """For each word that a procedure returns: how often, and the minutes until then."""
    library = without_states()
    procedures = {name: one.tree for name, one in library.procedures.items()}
    run = library.procedures[name].run
    assert run is not None
    shares = Walker(procedures[name], Random(name), procedures).words()
    for word, outcome in run.outcomes.items():
        assert float(outcome.chance) == pytest.approx(shares.get(word, 0.0))
        walker = Walker(procedures[name], Random(name), procedures, word)
        lengths = [walker.walk() for _ in range(WALKS)]
        plan = float(outcome.minutes)
        allowed = ERRORS * pstdev(lengths) / sqrt(WALKS) + SHARED * plan * walker.shares_tries()
        assert abs(fmean(lengths) - plan) <= allowed + 1e-9, word
        assert outcome.shortest <= min(lengths) + 1e-9
        if outcome.chance:  # a walk by `spent` here ignores the limits of the other steps
            assert max(lengths) <= outcome.longest + 1e-9
