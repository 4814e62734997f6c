"""A site on the phone: kept whole, walked without a network, replaced when that is asked for."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from builder.site.offline import SIZE_SCRIPT, WORKER, write_offline

from .conftest import serving
from .walker import get_ready, leave, opened_page, place

TREE = "horn/silent"
TABLE = f"walks/{TREE}.js"
NEEDED = ("index.html", "assets", "walks/shop.js", TABLE, f"trees/{TREE}.html")

UPDATE = """
async () => {
  const worker = await navigator.serviceWorker.getRegistration();
  await worker.update();
  while (!worker.waiting) await new Promise((then) => { setTimeout(then, 50); });
}
"""


@pytest.fixture
def site(whole: Path, tmp_path: Path) -> Path:
    """Copy what a walk of one tree needs, as a site of its own."""
    for name in NEEDED:
        copy = shutil.copytree if (whole / name).is_dir() else shutil.copy
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        copy(whole / name, tmp_path / name)
    return tmp_path


def publish(site: Path) -> None:
    """List the files as a build does, which begins with an empty folder."""
    for name in (WORKER, SIZE_SCRIPT):
        (site / name).unlink(missing_ok=True)
    write_offline(site, {})


@pytest.fixture
def page(chromium: Browser, site: Path) -> Iterator[Page]:
    """Open a page of the site."""
    publish(site)
    with serving(site) as address, opened_page(chromium, base_url=address) as page:
        yield page


def test_a_kept_site_is_walked_without_a_network(page: Page, site: Path) -> None:
    """What couldn't be fetched whole isn't kept; then the files may go, and an update waits.

    Once it is loaded, the job goes on and names the step that reads differently.
    """
    kept, table = page.locator("#offline"), (site / TABLE).read_text("utf-8")
    (site / TABLE).unlink()
    page.goto("/index.html")
    kept.get_by_role("button").tap()
    expect(kept).to_contain_text("could not be kept")
    (site / TABLE).write_text(table, "utf-8")
    kept.get_by_role("button").tap()
    expect(kept).to_have_text("The whole site is kept on this device.")

    (site / TABLE).unlink()
    page.goto(f"/trees/{TREE}.html#walk")
    get_ready(page)
    page.locator('[data-result="0"]').tap()
    leave(page)
    here = place(page)

    (site / TABLE).write_text(table.replace("Fuse of the horn", "Fuse 7 of the horn"), "utf-8")
    publish(site)
    page.evaluate(UPDATE)
    page.reload()
    get_ready(page)
    assert place(page) == here
    assert not page.locator("#walk-notice").count(), "of two builds nothing is mixed"

    page.goto("/index.html")
    kept.get_by_text("Load it").tap()
    expect(kept).to_have_text("The whole site is kept on this device.")
    page.locator(".job").tap()
    expect(page.locator("#walk-notice")).to_contain_text("Different now: Fuse 7 of the horn")
    assert place(page) == here
