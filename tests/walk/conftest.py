"""The walk tables of one tree with every kind of check, and of the trees of the tests' shop."""

import json
from pathlib import Path

import pytest

from builder.check.unchecked_library import read_library
from builder.model.library import Library
from builder.model.tree import Tree
from builder.reader.source import Source, decode
from builder.reader.trees import read_tree, tree_from
from builder.walk.rows import Table
from builder.walk.table import walk_table

HERE = Path(__file__).parent
SHOP = HERE.parent / "shop"


@pytest.fixture(scope="session")
def checks() -> Tree:
    """Return the tree that has one check of every kind with readings."""
    source = decode("trees/horn/checks.yml", (HERE / "cases" / "checks.yml").read_bytes())
    assert isinstance(source, Source)
    tree, findings = tree_from(source)
    assert not findings
    assert tree
    return tree


@pytest.fixture(scope="session")
def table(checks: Tree) -> Table:
    """Return its walk table as the page gets it: through JSON."""
    library, findings = read_library(SHOP)
    assert not findings
    found: Table = json.loads(json.dumps(walk_table(checks, library)))
    return found


@pytest.fixture(scope="session")
def shop() -> tuple[Library, list[Tree]]:
    """Return the tests' shop and its trees."""
    library, _ = read_library(SHOP)
    read = (read_tree(SHOP, SHOP / one.file)[0] for one in library.trees.values())
    return library, [tree for tree in read if tree and not tree.broken]
