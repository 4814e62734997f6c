"""The trees that charts and prints are tested on.

In: the tests' shop, and a small tree beside this file. Out: trees and the library.
"""

from functools import cache
from pathlib import Path
from textwrap import dedent

from builder.check.unchecked_library import read_library
from builder.model.library import Library
from builder.model.tree import Tree
from builder.reader.source import Source, decode
from builder.reader.trees import read_tree, tree_files, tree_from

HERE = Path(__file__).parent
SHOP = HERE.parent / "shop"


@cache
def shop_library() -> Library:
    """Read the knowledge of the shop."""
    return read_library(SHOP)[0]


@cache
def shop_trees() -> tuple[Tree, ...]:
    """Read every tree of the shop."""
    found = (read_tree(SHOP, file)[0] for file in tree_files(SHOP))
    trees = tuple(tree for tree in found if tree)
    assert trees, "tests that go through all trees would say nothing"
    return trees


@cache
def small_tree() -> Tree:
    """Read the small tree."""
    return tree_of((HERE / "small.yml").read_text())


def tree_of(text: str) -> Tree:
    """Read a tree from its text; it must be sound as a text."""
    source = decode("trees/charging/small.yml", dedent(text).encode())
    assert isinstance(source, Source)
    tree, findings = tree_from(source)
    assert tree is not None
    assert not findings, findings
    return tree
