"""A small shop for the tests of the site, and a way to build it."""

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from builder.model.tree import Tree
from builder.reader.library import read_library
from builder.reader.trees import read_tree
from builder.site.build import build_site

SHOP = Path(__file__).parents[1] / "shop"


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """Return a copy of the test shop that a test may change."""
    return Path(shutil.copytree(SHOP, tmp_path / "shop"))


@pytest.fixture
def build() -> Callable[[Path], Path]:
    """Return a function that builds a shop's site and gives back its folder."""
    return build_shop


def build_shop(shop: Path) -> Path:
    """Read a shop and build its site beside it."""
    library, _ = read_library(shop)

    def one(id_: str) -> Tree:
        tree, _ = read_tree(shop, shop / library.trees[id_].file)
        assert tree
        return tree

    out = shop.parent / "site"
    build_site(shop, library, one, out)
    return out
