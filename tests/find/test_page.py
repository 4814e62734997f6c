"""The search as people use it: from a folder, on a phone, by keyboard, light and dark."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, expect

from builder.find.page_data import search_script
from builder.find.search_table import SearchTable

STATIC = Path(__file__).parents[2] / "builder" / "web"
HOME = """<!doctype html><html lang="en"><head><meta charset="utf-8"><title>What does it do?</title>
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'self';
 style-src 'self'; img-src 'self' data:; base-uri 'none'; object-src 'none'">
<meta name="viewport" content="width=device-width,initial-scale=1">
<link rel="stylesheet" href="assets/site.css"><script src="assets/site.js"></script>
<script src="assets/dom.js" defer></script><script src="assets/search.js" defer></script></head>
<body><main class="md-typeset"><h1>What does it do?</h1><div id="find"></div>
<div id="ways-in"><p><a class="tile" href="systems/brakes.html">Brakes</a></p></div></main></body>
</html>
"""


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory, small: SearchTable) -> Path:
    """Return a folder with a first page, the search, and a page to go to."""
    made = tmp_path_factory.mktemp("site")
    shutil.copytree(STATIC, made / "assets")
    marked = [
        tree._replace(
            title=tree.title.replace("One module", "<img src=x onerror=alert(1)> One module")
        )
        for tree in small.trees
    ]
    script = search_script(small._replace(trees=tuple(marked)))
    (made / "assets" / "search-data.js").write_text(script)
    (made / "index.html").write_text(HOME)
    (made / "trees" / "starting").mkdir(parents=True)
    page = "<!doctype html><html lang=en><title>A tree</title><h1>A tree</h1></html>"
    (made / "trees" / "starting" / "silent.html").write_text(page)
    return made


@pytest.fixture
def page(browser: Browser, folder: Path) -> Iterator[Page]:
    """Return the first page, opened from the folder on a phone; any error fails the test."""
    context = browser.new_context(viewport={"width": 390, "height": 844})
    opened = context.new_page()
    troubles: list[str] = []
    opened.on("pageerror", lambda error: troubles.append(str(error)))
    opened.on("requestfailed", lambda request: troubles.append(request.url))
    opened.on("dialog", lambda dialog: troubles.append(dialog.message))
    opened.on("console", lambda said: troubles.append(said.text) if said.type == "error" else None)
    opened.goto((folder / "index.html").as_uri())
    yield opened
    context.close()
    assert not troubles


def ask(page: Page, query: str) -> None:
    """Type a query and wait for what is said about it."""
    page.fill("#find-words", query)
    expect(page.locator(".find-count")).not_to_be_empty()
    page.wait_for_timeout(400)  # what is said follows when the typing rests


def titles(page: Page) -> list[str]:
    """Return the titles of the hits."""
    return page.locator(".find-hits b").all_text_contents()


def test_the_search_is_loaded_at_the_first_use(page: Page) -> None:
    """Until somebody wants to search, the index is not asked for."""
    assert page.evaluate("globalThis.baytreeSearchData === undefined")
    page.focus("#find-words")
    page.wait_for_timeout(500)
    assert page.evaluate("globalThis.baytreeSearchData !== undefined")


def test_the_right_tree_stands_on_the_first_screen(page: Page) -> None:
    """Misspelt words on a phone whose keyboard leaves half a screen: the tree is still in view."""
    ask(page, "altenator lite on")
    assert titles(page)[0] == "Charging lamp on while driving"
    bottom = page.locator(".find-hits a").first.bounding_box()
    assert bottom
    assert bottom["y"] + bottom["height"] < 422
    assert "alternator" in page.locator(".find-understood").inner_text()
    assert not page.locator("#ways-in").is_visible()


def test_every_state_has_an_address(page: Page, folder: Path) -> None:
    """The address of a search finds the same again."""
    ask(page, "won't crank")
    found = titles(page)
    assert page.url.endswith("#q=won't%20crank")
    page.goto("about:blank")
    page.goto((folder / "index.html").as_uri() + "#q=won%27t%20crank")
    page.wait_for_selector(".find-hits a")
    assert titles(page) == found


def test_back_goes_where_one_came_from(page: Page) -> None:
    """From a tree back to the hits, from the hits back to the empty page; forward again too."""
    for typed in ("no", "no cra", "no crank"):
        ask(page, typed)
    page.locator(".find-hits a").first.click()
    page.wait_for_selector("h1:has-text('A tree')")
    page.go_back()
    page.wait_for_selector(".find-hits a")
    assert page.input_value("#find-words") == "no crank"
    page.go_back()
    expect(page.locator("#find-words")).to_have_value("")
    assert page.locator("#ways-in").is_visible()
    page.go_forward()
    page.wait_for_selector(".find-hits a")
    assert page.input_value("#find-words") == "no crank"


def test_a_vehicle_number_stays_out_of_the_address(page: Page) -> None:
    """What can be sent on names no vehicle; the number stays in this tab, over a reload too."""
    ask(page, "0ZZAB1DE0S0123456 cranks slowly")
    assert "0ZZ" not in page.url
    assert "check digit matches" in page.locator(".find-understood").inner_text()
    page.reload()
    page.wait_for_selector(".find-hits a")
    assert "0ZZAB1DE0S0123456" in page.input_value("#find-words")


def test_the_vehicle_is_cleared_with_the_results(page: Page) -> None:
    """Clear takes all away at once."""
    ask(page, "tern no crank")
    assert "Corvane Tern" in page.locator(".find-understood").inner_text()
    page.click("text=Clear")
    assert page.input_value("#find-words") == ""
    assert page.locator(".find-understood").inner_text() == ""
    assert "#" not in page.url
    assert page.evaluate("document.activeElement.id") == "find-words"


def test_the_whole_way_by_keyboard(page: Page) -> None:
    """Tab to the box, type, down to the hits, up again, Enter opens the tree."""
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.id") == "find-words"
    page.keyboard.type("no crank")
    page.wait_for_selector(".find-hits a")
    page.keyboard.press("ArrowDown")
    page.keyboard.press("ArrowDown")
    page.keyboard.press("ArrowUp")
    page.keyboard.press("ArrowUp")
    assert page.evaluate("document.activeElement.id") == "find-words"
    page.keyboard.press("Enter")
    page.keyboard.press("Enter")
    page.wait_for_selector("h1:has-text('A tree')")


def test_an_ambiguous_word_is_asked_about(page: Page) -> None:
    """Set up can mean several things; a press on one of them asks for that."""
    ask(page, "set it up")
    page.click("button:has-text('configuration')")
    assert page.input_value("#find-words") == "configuration"


def test_nothing_found_is_explained(page: Page) -> None:
    """No tree: it says so, with the words in no tree and how to begin one; the lists come back."""
    ask(page, "xyzzy quux")
    assert page.locator(".find-count").inner_text() == "We have no tree for this."
    assert "xyzzy" in page.locator(".find-understood").inner_text()
    assert "baytree new tree" in page.locator(".find-instead").inner_text()
    assert page.locator(".find-instead a").count() == 0
    assert page.locator("#ways-in").is_visible()
    ask(page, "brakes squeal in the rain ")
    assert page.locator(".find-instead a").count() == 1
    ask(page, "U0122")
    assert "No tree for this DTC yet" in page.locator(".find-understood").inner_text()


def test_danger_comes_first_and_stays(page: Page) -> None:
    """The safety line stands above all results, with trees or without, and goes with the words."""
    line = page.locator(".find-safety")
    for query in ("no brakes", "smoke from the dash, battery light on"):
        ask(page, query)
        assert line.inner_text().startswith("WARNING")
        below = page.locator(".find-count").bounding_box()
        above = line.bounding_box()
        assert above
        assert below
        assert above["y"] < below["y"]
    page.click("text=Clear")
    assert line.inner_text() == ""


def test_counts_are_of_the_trees_there_are(page: Page) -> None:
    """A vehicle alone: how many trees are for it, and not how many are shown."""
    ask(page, "corvane tern")
    assert page.locator(".find-count").inner_text() == "2 trees for Corvane Tern"


def test_without_the_index_the_lists_stay(browser: Browser, folder: Path, tmp_path: Path) -> None:
    """If the search cannot be loaded it says so, and the ways in without typing stay in view."""
    made = Path(shutil.copytree(folder, tmp_path / "site"))
    (made / "assets" / "search-data.js").unlink()
    page = browser.new_page()
    page.goto((made / "index.html").as_uri())
    ask(page, "no crank")
    assert "didn't load" in page.locator(".find-count").inner_text()
    assert page.locator("#ways-in").is_visible()
    page.close()


def test_what_authors_write_is_text(page: Page) -> None:
    """A title with markup in it is shown as it is written."""
    ask(page, "module offline")
    assert titles(page)[0].startswith("<img src=x")


def test_everything_pressed_is_large_enough_for_a_glove(page: Page) -> None:
    """Box, buttons and links are at least 44 px high and wide."""
    for query in ("set it up U0121 tern", "xyzzy"):
        ask(page, query)
        sizes = page.eval_on_selector_all(
            "#find input, #find button, #find a",
            "all => all.filter((one) => one.offsetParent)"
            ".map((one) => [one.textContent, one.offsetWidth, one.offsetHeight])",
        )
        assert [size for size in sizes if min(size[1:]) < 44] == []


@pytest.mark.parametrize("look", ["light", "dark"])
@pytest.mark.parametrize("width", [390, 1280])
def test_no_violation_of_accessibility(
    browser: Browser, folder: Path, width: int, look: str
) -> None:
    """axe-core finds nothing, with the search closed, open, and with nothing found."""
    scheme = "dark" if look == "dark" else "light"
    context = browser.new_context(
        viewport={"width": width, "height": 844}, color_scheme=scheme, bypass_csp=True
    )
    page = context.new_page()
    page.goto((folder / "index.html").as_uri())
    for query in ("", "set it up U0121 altenator tern light", "xyzzy"):
        page.fill("#find-words", query)
        page.wait_for_timeout(600)
        found = Axe().run(page)
        assert found.violations_count == 0, found.generate_report()
    context.close()
