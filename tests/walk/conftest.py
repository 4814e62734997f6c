"""The walk tables of the test tree and of the demo trees."""

import json
from pathlib import Path

import pytest

from builder.check.library import read_library
from builder.model.library import Library
from builder.model.tree import Tree
from builder.reader.trees import read_tree
from builder.walk.rows import Table
from builder.walk.table import walk_table

HERE = Path(__file__).parent
ROOT = HERE.parents[1]


@pytest.fixture(scope="session")
def checks() -> Tree:
    """Return the tree that has one check of every kind with readings."""
    tree, findings = read_tree(HERE / "shop", HERE / "shop" / "trees" / "bench" / "checks.yml")
    assert not findings
    assert tree
    return tree


@pytest.fixture(scope="session")
def table(checks: Tree) -> Table:
    """Return its walk table as the page gets it: through JSON."""
    library, findings = read_library(HERE / "shop")
    assert not findings
    found: Table = json.loads(json.dumps(walk_table(checks, library)))
    return found


@pytest.fixture(scope="session")
def demo() -> tuple[Library, list[Tree]]:
    """Return the demo shop and its trees that are whole."""
    library, _ = read_library(ROOT)
    read = (read_tree(ROOT, ROOT / one.file)[0] for one in library.trees.values())
    return library, [tree for tree in read if tree and not tree.broken]
