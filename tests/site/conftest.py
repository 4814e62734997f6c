"""A small shop for the tests of the site, and a way to build it."""

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from builder.model.tree import Tree
from builder.reader.library import read_library
from builder.reader.trees import read_tree
from builder.site.build import Built, Input, build_site

SHOP = Path(__file__).parents[1] / "shop"
REPO = Path(__file__).parents[2]


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """Return a copy of the test shop that a test may change."""
    return Path(shutil.copytree(SHOP, tmp_path / "shop"))


@pytest.fixture
def build() -> Callable[[Path], Path]:
    """Return a function that builds a shop's site and gives back its folder."""

    def built(shop: Path) -> Path:
        build_shop(shop, shop.parent / "site")
        return shop.parent / "site"

    return built


def build_shop(shop: Path, out: Path) -> Built:
    """Read a shop and build its site."""
    library, _ = read_library(shop)

    def one(id_: str) -> Tree:
        tree, _ = read_tree(shop, shop / library.trees[id_].file)
        assert tree
        return tree

    return build_site(Input(shop, library, one, prints=False), out)
