"""The walk tables of one tree with every kind of check, and of the trees of the test shop."""

import json
import subprocess
import sys
from functools import cache
from pathlib import Path

import pytest

from builder.check.unchecked_library import read_library
from builder.model.library import Library
from builder.model.tree import Tree
from builder.reader.source import Source, decode
from builder.reader.trees import read_tree, tree_from
from builder.walk.compile_shop import walk_tables
from builder.walk.compile_tree import tree_table
from builder.walk.rows import WalkTable
from builder.walk.table import walk_table
from builder.walk.walk_tables import WalkTables

HERE = Path(__file__).parent
SHOP = HERE.parent / "shop"
SAMPLES = HERE.parent / "samples"  # in format 2, with states, procedures and specs


@cache
def tables_of(shop: Path) -> WalkTables:
    """Return the tables of all trees of a shop."""
    library, _ = read_library(shop)
    read = (read_tree(shop, shop / entry.file)[0] for entry in library.trees.values())
    trees = {tree.id: tree_table(tree, library) for tree in read if tree}
    assert trees, "tests that go through all trees would say nothing"
    return walk_tables(library, trees)


@pytest.fixture(scope="session")
def samples() -> WalkTables:
    """Return the tables of the samples in format 2."""
    return tables_of(SAMPLES)


@pytest.fixture(scope="session")
def checks() -> Tree:
    """Return the tree with one check of every kind with readings."""
    source = decode("trees/horn/checks.yml", (HERE / "cases" / "checks.yml").read_bytes())
    assert isinstance(source, Source)
    tree, findings = tree_from(source)
    assert not findings
    assert tree
    return tree


@pytest.fixture(scope="session")
def table(checks: Tree) -> WalkTable:
    """Return its walk table as the page gets it: through JSON."""
    library, findings = read_library(SHOP)
    assert not findings
    walk: WalkTable = json.loads(json.dumps(walk_table(checks, library)))
    return walk


@pytest.fixture(scope="session")
def shop() -> tuple[Library, list[Tree]]:
    """Return the test shop and its trees."""
    library, _ = read_library(SHOP)
    trees = (read_tree(SHOP, SHOP / entry.file)[0] for entry in library.trees.values())
    return library, [tree for tree in trees if tree and not tree.broken]


@pytest.fixture(scope="session")
def generated(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Write a shop of generated trees, of 5 to 80 steps, with ways back, limits and handoffs."""
    folder = tmp_path_factory.mktemp("generated")
    script = HERE.parent / "bench" / "generate.py"
    subprocess.run([sys.executable, str(script), str(folder), "--trees", "20"], check=True)
    return folder


@pytest.fixture(scope="session", params=["shop", "samples", "generated"])
def tables(request: pytest.FixtureRequest) -> WalkTables:
    """Return the tables of all trees of a shop, of each in turn."""
    shops = {"shop": SHOP, "samples": SAMPLES}
    shop = shops.get(request.param) or request.getfixturevalue("generated")
    return tables_of(shop)
