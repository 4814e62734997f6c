"""What all tests share: a cache folder of their own, one browser, and no clock on properties."""

import os
import shutil
from collections.abc import Iterator
from typing import TYPE_CHECKING

import pytest
from hypothesis import settings

if TYPE_CHECKING:
    from playwright.sync_api import Browser

# A busy machine is no fault of what is tested; and what is drawn is the same each time, so that a
# pull request passes or fails by its own changes. `--hypothesis-profile search` draws anew.
settings.register_profile("same", deadline=None, derandomize=True)
settings.register_profile("search", deadline=None)
settings.load_profile("same")
NAMES = ("chromium", "chromium-browser", "google-chrome")


@pytest.fixture(scope="session", autouse=True)
def cache_folder(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Keep what checks and builds remember away from the user's own cache folder.

    Commands keep their compiled code, as installed ones have it: else each compiles it once more.
    """
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))
        patch.delenv("PYTHONDONTWRITEBYTECODE", raising=False)
        yield


@pytest.fixture(scope="session")
def browser() -> Iterator["Browser"]:
    """Start Chromium once for all; without it tests that need it are skipped, but never in CI."""
    found = os.environ.get("CHROMIUM") or next(filter(None, map(shutil.which, NAMES)), None)
    if not found:
        if os.environ.get("CI"):
            pytest.fail("no Chromium: install it, or set CHROMIUM to where it is")
        pytest.skip("no Chromium on this machine; set CHROMIUM to where it is")
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=found, args=["--no-sandbox"])
        yield started
        started.close()
