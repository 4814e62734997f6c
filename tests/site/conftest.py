"""A small shop and the demo shop for the tests of the site, and a browser to look at them."""

import shutil
from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from builder.cache.database import Cache, opened, temporary
from builder.check.library import read_library
from builder.model.finding import Finding
from builder.reader.trees import tree_of
from builder.site.build import Built, SiteInput, build_site

if TYPE_CHECKING:
    from playwright.sync_api import Browser

REPO = Path(__file__).parents[2]


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """Return a copy of the test shop that a test may change."""
    return Path(shutil.copytree(REPO / "tests" / "shop", tmp_path / "shop"))


@pytest.fixture
def build() -> Callable[[Path], Path]:
    """Return a function that builds a shop's site and gives back its folder."""

    def built(shop: Path) -> Path:
        build_shop(shop, shop.parent / "site")
        return shop.parent / "site"

    return built


@pytest.fixture(scope="session")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build the site of the demo shop once."""
    folder = tmp_path_factory.mktemp("demo")
    for name in ("trees", "kb", "site_config"):
        shutil.copytree(REPO / name, folder / "shop" / name)
    build_shop(folder / "shop", folder / "site")
    return folder / "site"


@pytest.fixture(scope="session")
def chromium(browser: "Browser") -> "Browser":
    """The browser by the name that these tests use."""
    return browser


def build_shop(
    shop: Path, out: Path, *, cached: bool = True, findings: tuple[Finding, ...] | None = None
) -> Built:
    """Read a shop and build its site."""
    with opened(shop) if cached else temporary() as cache:
        return build_with(shop, out, cache, findings)


def build_with(
    shop: Path, out: Path, cache: Cache, findings: tuple[Finding, ...] | None = None
) -> Built:
    """Read a shop and build its site with an open cache."""
    library, _ = read_library(shop)
    read_tree = partial(tree_of, shop, library)
    given = SiteInput(shop, cache, library, read_tree, prints=False, findings=findings)
    return build_site(given, out)
