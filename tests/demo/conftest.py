"""The demo: the shop of this repository. Only these tests (and benchmarks) read it.

They measure any demo that may stand there: no tree, step or module is named in them but in the two
query sets, which are written for its trees.
"""

import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "chart"))

from builder.check.filled_tree import tree_of
from builder.check.unchecked_library import read_library
from builder.model.library import Library
from builder.model.tree import Tree

DEMO = Path(__file__).parents[2]


@pytest.fixture(scope="session")
def demo() -> Path:
    """Return the folder of the demo."""
    return DEMO


@pytest.fixture(scope="session")
def library() -> Library:
    """Return what the demo knows."""
    return read_library(DEMO)[0]


@pytest.fixture(scope="session")
def trees(library: Library) -> tuple[Tree, ...]:
    """Return every tree of the demo, with its specs and procedures."""
    assert library.trees, "tests that go through all trees would say nothing"
    return tuple(tree_of(DEMO, library, id_) for id_ in library.trees)
