"""Everyone can use it: no violation that axe-core knows, targets for gloves, keyboard only."""

from collections.abc import Iterator
from pathlib import Path

import axe_playwright_python
import pytest
from playwright.sync_api import Browser, Page

from builder.commands.saved_shop import SavedShop
from builder.site.watch import file_times

from .conftest import few_trees

AXE = (Path(axe_playwright_python.__file__).parent / "axe.min.js").read_text("utf-8")
RUN = "async () => (await axe.run(document)).violations"
LOOKS = [(390, "light"), (1280, "dark")]  # contrast depends on the look, layout on the width
# A page of every kind; of a kind with many pages, one with a lot on it.
KINDS = (
    "index", "systems/index", "systems/charging", "lamps/index", "lamps/charging", "codes/index",
    "codes/P0562", "during/index", "during/driving", "vehicles/index", "vehicles/tern",
    "modules/index", "modules/steering-unit", "procedures/index", "procedures/first-stop",
    "how-to/index", "how-to/voltage-drop", "tools",
    "glossary", "words", "upkeep", "rules/index", "rules/reading-gap", "about", "more",
    "calculators", "trees/charging/battery-lamp", "trees/battery/fuses-pulled",
)  # fmt: skip
SERVED_KINDS = (
    "findings",
    "trees/horn/silent",
    "trees/wipers/stop-halfway",
)  # as `baytree serve` shows a tree with errors
# What goes on with a walk: read, confirm, or else the second answer.
ANSWER = (
    '[data-do="acknowledge"], [data-do="confirm"], .w-answers:not(:has([data-do="confirm"]))'
    ' [data-result="1"], .w-answers:not(:has([data-do="confirm"])) [data-choice="1"]'
)
TARGETS = {
    "index": ("#find input", ".tile", ".chip", ".button", "nav a", ".bay-look"),
    "vehicles/tern": (".jump .chip", ".jump .button", ".pin-fuse", ".row", "summary"),
    "trees/charging/battery-lamp": (".button", ".way", ".chip", ".bay-search button", "summary"),
}


@pytest.fixture(scope="module")
def page(chromium: Browser) -> Iterator[Page]:
    """Open a page."""
    context = chromium.new_context(reduced_motion="reduce")
    yield context.new_page()
    context.close()


def violations(page: Page) -> list[str]:
    """Return what axe-core reports on a phone in daylight and at a desk at night, a line each."""
    page.evaluate(AXE)
    lines = []
    for width, look in LOOKS:
        page.set_viewport_size({"width": width, "height": 844})
        page.emulate_media(color_scheme=look)
        lines += [
            f"{width} {look} {rule['id']}: {node['html'][:120]} ({node['failureSummary']})"
            for rule in page.evaluate(RUN)
            for node in rule["nodes"]
        ]
        if page.evaluate("document.documentElement.scrollWidth - innerWidth") > 0:
            lines.append(f"{width} {look}: the page scrolls sideways")
    return lines


@pytest.mark.parametrize("kind", KINDS)
def test_everyone_can_use_every_kind_of_page(whole: Path, page: Page, kind: str) -> None:
    """Every kind of page passes every rule of axe-core, and never scrolls sideways as a whole."""
    page.goto((whole / f"{kind}.html").as_uri())
    assert violations(page) == []


@pytest.fixture(scope="module")
def served(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Write the site as `baytree serve` has it while two trees have an error."""
    shop = few_trees(tmp_path_factory.mktemp("served"))
    bad_from_the_start = shop / "trees" / "wipers" / "stop-halfway.yml"
    bad_from_the_start.write_text("title: Wipers\n", "utf-8")
    saved = SavedShop(shop)
    saved.check(file_times(shop))
    tree = shop / "trees" / "horn" / "silent.yml"
    tree.write_text(tree.read_text("utf-8").replace("minutes:", "minutse:", 1), "utf-8")
    preview = saved.check(file_times(shop)).preview
    for name in preview.names():
        file = shop.parent / "site" / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(preview.file(name) or b"")
    return shop.parent / "site"


@pytest.mark.parametrize("kind", SERVED_KINDS)
def test_everyone_can_use_the_pages_of_an_author(served: Path, page: Page, kind: str) -> None:
    """The findings, alone or above the last sound page of a tree, pass the same rules."""
    page.goto((served / f"{kind}.html").as_uri())
    assert page.locator(".finding").count() >= 1
    assert violations(page) == []


def test_everyone_can_use_the_search(whole: Path, page: Page) -> None:
    """Hits, corrections and suggestions pass as well."""
    page.goto((whole / "index.html").as_uri())
    for words in ("altenator dead", "U0131", "zzzz qqqq"):
        page.fill("#find input", "")
        page.wait_for_selector(".find-count:empty", state="attached")
        page.fill("#find input", words)
        page.wait_for_selector(".find-count:not(:empty)")
        assert violations(page) == []


def test_targets_are_large_enough_for_gloves(whole: Path, page: Page) -> None:
    """Everything to press between a symptom and a fix is at least 44 px high."""
    for width, _ in LOOKS:
        page.set_viewport_size({"width": width, "height": 844})
        for kind, targets in TARGETS.items():
            page.goto((whole / f"{kind}.html").as_uri())
            page.evaluate("document.querySelectorAll('details').forEach((one) => one.open = true)")
            for target in targets:
                heights = [
                    (box.bounding_box() or {"height": 0})["height"]
                    for box in page.locator(target).all()
                    if box.is_visible()
                ]
                assert min(heights, default=0) >= 43.9, f"{target} on {kind}"


def test_a_keyboard_is_enough(whole: Path, page: Page) -> None:
    """From the home page to a fix without a mouse: type, Tab, Enter; the focus is visible."""
    page.set_viewport_size({"width": 1280, "height": 844})
    page.goto((whole / "index.html").as_uri())
    tab_to(page, "#find input")
    page.keyboard.type("battery light on while driving")
    page.wait_for_selector(".find-hits a")
    tab_to(page, ".find-hits a")
    page.keyboard.press("Enter")
    page.wait_for_url("**/trees/charging/battery-lamp.html")
    tab_to(page, ".button.first")
    assert page.evaluate("getComputedStyle(document.activeElement).outlineStyle") == "solid"
    page.keyboard.press("Enter")
    page.wait_for_selector("[data-step]")
    for _ in range(30):
        if page.locator("[data-end]").count():
            break
        tab_to(page, ANSWER)
        page.keyboard.press("Enter")
        page.wait_for_timeout(100)
    assert page.locator("[data-end]").count()


def tab_to(page: Page, target: str) -> None:
    """Press Tab until an element that matches has the focus."""
    for _ in range(200):
        page.keyboard.press("Tab")
        if page.evaluate("target => document.activeElement.matches(target)", target):
            return
    raise AssertionError(f"Tab never reaches {target}")
