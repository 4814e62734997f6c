"""A review is one page that needs nothing else, and its chart says what changed in words."""

import re

import pytest

from builder.authoring.new_shop import new_shop
from builder.check.filled_tree import tree_of
from builder.check.unchecked_library import read_library
from builder.pages.review import review_page
from builder.review.compare_shops import compare_shops

TREE = "charging/light-on"
HOSTILE = "</code><script>alert(1)</script>` & \"x\" onload='y'"
EDITS = (
    ("{result: below 13.2,", "{result: below 13.6,"),
    ("{result: 13.2 to 14.8,", "{result: 13.6 to 14.8,"),
    ("{yes: ask, no: belt-fix}", "{yes: ask, no: look}"),
    ("  belt-fix:\n", "  look:\n    check: Is the pulley loose?\n    results: {yes: ask, no: ask}\n"
                      "  belt-fix:\n"),
    ("It charges today", HOSTILE.replace("'", "''").join("''")),
)  # fmt: skip


@pytest.fixture(scope="module")
def page(tmp_path_factory: pytest.TempPathFactory) -> str:
    """Return the page of a tree that was edited."""
    folder = tmp_path_factory.mktemp("review")
    before, after = folder / "before", folder / "after"
    for shop in (before, after):
        new_shop(shop, with_examples=True)
    file = after / f"trees/{TREE}.yml"
    text = file.read_text("utf-8")
    for old, new in EDITS:
        assert old in text
        text = text.replace(old, new)
    file.write_text(text, "utf-8")
    library, _ = read_library(after)
    return review_page(compare_shops(before, after), {TREE: tree_of(after, library, TREE)}, library)


def test_the_chart_says_in_words_what_changed(page: str) -> None:
    """A new step, an old limit, an old branch, and a fix that no path leads to any more."""
    words = re.findall(r'<text[^>]* class="bold change">([^<]+)</text>', page)
    assert {"NEW", "CHANGED: limit", "was below 13.2", "led to belt-fix"} <= set(words)
    assert "NO LONGER REACHED" in words
    assert "no path leads to the fix <code>belt-fix</code> any more" in page
    bars = re.findall(r'<a class="box [\w ]+" id="tree-1-box-look".*?</a>', page, re.DOTALL)
    assert bars[0].count('class="bar"') == 2


def test_every_link_has_its_place_on_the_page(page: str) -> None:
    """A box leads to what is said of it, and what is said to its box; nothing leads elsewhere."""
    ids = re.findall(r' id="([^"]+)"', page)
    links = re.findall(r' href="([^"]*)"', page)
    assert len(ids) == len(set(ids))
    assert links
    assert {link.removeprefix("#") for link in links} <= set(ids)


def test_nothing_is_run_or_loaded(page: str) -> None:
    """What an author wrote is text, and styles and faces are inside."""
    assert not re.search(r"<(script|link|img|iframe|object)\b", page)
    assert set(re.findall(r"url\(\"?(.{11})", page)) == {"data:font/w"}
    assert "&lt;/code&gt;&lt;script&gt;alert(1)&lt;/script&gt;" in page
