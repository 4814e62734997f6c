"""The demo: the shop of this repository. Only these tests (and benchmarks) read it.

They measure any demo that may stand there: no tree, step or module is named in them but in the two
query sets, which are written for its trees.
"""

import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "chart"))

from builder.check.unchecked_library import read_library
from builder.model.library import Library
from builder.model.tree import Tree
from builder.reader.trees import read_tree, tree_files

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
def trees() -> tuple[Tree, ...]:
    """Return every tree of the demo."""
    read = (read_tree(DEMO, file)[0] for file in tree_files(DEMO))
    return tuple(tree for tree in read if tree)
