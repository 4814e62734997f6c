"""The tests' shop, complete and with two trees, its site, and a browser."""

import shutil
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from builder.cache.database import Cache, opened, temporary
from builder.check.filled_tree import tree_of
from builder.check.unchecked_library import read_library
from builder.site.build_site import SiteCounts, SiteInput, build_site

if TYPE_CHECKING:
    from playwright.sync_api import Browser

SHOP = Path(__file__).parents[1] / "shop"
FEW = ("horn", "wipers")  # systems of one tree each


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """Return a copy of the tests' shop that a test may change, with two trees to build fast."""
    return few_trees(tmp_path)


def few_trees(folder: Path) -> Path:
    """Copy the tests' shop with two of its trees."""
    copy = Path(shutil.copytree(SHOP, folder / "shop"))
    for system in (copy / "trees").iterdir():
        if system.name not in FEW:
            shutil.rmtree(system)
    return copy


@pytest.fixture
def build() -> Callable[[Path], Path]:
    """Return a function that builds a shop's site and returns its folder."""

    def built(shop: Path) -> Path:
        build_shop(shop, shop.parent / "site")
        return shop.parent / "site"

    return built


@pytest.fixture(scope="session")
def whole(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build the site of the complete shop once."""
    folder = tmp_path_factory.mktemp("whole")
    shutil.copytree(SHOP, folder / "shop")
    build_shop(folder / "shop", folder / "site")
    return folder / "site"


@pytest.fixture(scope="session")
def samples(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build the site of the shop with procedures, specs and states of the vehicle once."""
    folder = tmp_path_factory.mktemp("samples")
    shutil.copytree(SHOP.parent / "samples", folder / "shop")
    build_shop(folder / "shop", folder / "site")
    return folder / "site"


@pytest.fixture(scope="session")
def chromium(browser: "Browser") -> "Browser":
    """Return the browser by the name that these tests use."""
    return browser


def build_shop(shop: Path, out: Path, *, cached: bool = True) -> SiteCounts:
    """Read a shop and build its site."""
    with opened(shop) if cached else temporary() as cache:
        return build_with(shop, out, cache)


def build_with(shop: Path, out: Path, cache: Cache) -> SiteCounts:
    """Read a shop and build its site with an open cache."""
    library, _ = read_library(shop)
    read_tree = partial(tree_of, shop, library)
    return build_site(SiteInput(shop, cache, library, read_tree, prints=False), out)


class _Quiet(SimpleHTTPRequestHandler):
    """Hands out files, and says nothing."""

    def log_message(self, *_: object) -> None:
        """Leave the terminal to the tests."""


@contextmanager
def serving(folder: Path) -> Iterator[str]:
    """Serve a folder on this machine, as a static host does; give its address."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(_Quiet, directory=str(folder)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}"
    server.shutdown()
    server.server_close()
