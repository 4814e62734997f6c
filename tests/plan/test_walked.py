"""The minutes of trees, held against walks by dice.

Reference: `walker.py`, written from the words of the format without anything of `builder.plan`. The
average of many independent walks is nearly normal, so that it lies within five standard errors of
the true mean but once in more than a million trees (central limit theorem; from memory). The same
with 100,000 walks a tree, on demand: `python tests/bench/walks.py`.
"""

from math import sqrt
from pathlib import Path
from random import Random
from statistics import fmean, pstdev

import pytest

from builder.model.tree import Tree
from builder.plan.minutes import minutes
from builder.reader.trees import read_tree, tree_files

from .walker import Walker

SHOP = Path(__file__).parents[1] / "shop"
CASES = sorted((Path(__file__).parent / "cases").glob("*.yml"))
WALKS = 1_000
ERRORS = 5
SHARED = 0.03  # of the minutes: tries shared by ways back of several steps, see `plan/expected.py`


def is_as_walked(tree: Tree) -> bool:
    """Whether the plan of a tree and its walks are as near as they must be."""
    walker = Walker(tree, Random(tree.id))
    taken = [walker.walk() for _ in range(WALKS)]
    plan = float(minutes(tree).expected)
    allowed = ERRORS * pstdev(taken) / sqrt(WALKS) + SHARED * plan * walker.shares_tries()
    return abs(fmean(taken) - plan) <= allowed + 1e-9


@pytest.mark.parametrize("path", tree_files(SHOP), ids=lambda path: path.stem)
def test_a_tree_takes_as_long_as_its_walks(path: Path) -> None:
    """A thousand walks by dice take as long on the average as the plan says."""
    tree, _ = read_tree(SHOP, path)
    assert tree is not None
    assert is_as_walked(tree)


@pytest.mark.parametrize("path", CASES, ids=lambda path: path.stem)
def test_a_case_takes_as_long_as_its_walks(path: Path, tree) -> None:
    """The cases worked out by hand come out of the dice as well."""
    assert is_as_walked(tree(path.read_text("utf-8")))
