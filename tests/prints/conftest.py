"""Trees for the tests of prints: those of the charts."""

import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "chart"))

from shop import shop_library, shop_trees, small_tree

from builder.model.library import Library
from builder.model.tree import Tree


@pytest.fixture(scope="session")
def library() -> Library:
    """Return the knowledge of the tests' shop."""
    return shop_library()


@pytest.fixture(scope="session")
def trees() -> tuple[Tree, ...]:
    """Return every tree of the tests' shop."""
    return shop_trees()


@pytest.fixture(scope="session")
def small() -> Tree:
    """Return a small tree in which every rarer way out is used."""
    return small_tree()
