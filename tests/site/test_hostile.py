"""What an author writes is text: scripts in every field never run.

The corpus goes into the model, past the reader, which would refuse much of it: the pages must be
safe by themselves.
"""

import shutil
from collections.abc import Callable, Mapping
from dataclasses import fields, is_dataclass, replace
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser

from builder.cache.database import temporary
from builder.check.unchecked_library import read_library
from builder.graph.runs import procedure_named
from builder.model.knowledge import HowTo
from builder.model.text import Text
from builder.reader.trees import read_tree
from builder.site.build_site import SiteInput, build_site

from .conftest import SHOP

CORPUS = (
    "<script>globalThis.ran=1</script>",
    "\"><img src=x onerror=globalThis.ran=1>",
    "'><svg/onload=globalThis.ran=1>",
    "</title><script>globalThis.ran=1</script>",
    "</h1></a></table><iframe srcdoc='<script>parent.ran=1</script>'>",
    "\" onfocus=globalThis.ran=1 autofocus x=\"",
    "' onmouseover='globalThis.ran=1",
    "javascript:globalThis.ran=1",
    "<!-- the page goes in here --><b>twice</b>",
    "--><script>globalThis.ran=1</script><!--",
    "]]><script>globalThis.ran=1</script>",
    "&lt;script&gt;globalThis.ran=1&lt;/script&gt;",
    "{{ config.__class__ }}{% raw %}${7*7}",
    "<a href=\"javascript:globalThis.ran=1\">press</a>",
    "[press](javascript:globalThis.ran=1) ![x](x\" onerror=\"globalThis.ran=1)",
    "<style>*{display:none}</style><base href=//elsewhere.example/>",
    "\u2028</script><script>globalThis.ran=1</script>",
    "\\u003cscript\\u003eglobalThis.ran=1",
)  # fmt: skip
# One code is like another.
LEFT_OUT = {"404.html", *(f"{c}0{n:03X}.html" for c in "PCBU" for n in range(0x90, 0xFFF))}
# What has to stay as it is, or there is no tree to show: ids, branches, the closed lists.
KEPT = {
    "id", "step", "tree", "verb", "branch", "then", "spent", "cannot_test", "still_there", "system",
    "tools", "hazards", "how_to", "lamps", "codes", "code", "status", "same_as", "at", "does",
    "file", "module", "replaced_by", "each", "unit", "signal", "expression", "name_of", "kind",
}  # fmt: skip


def poisoned(value: Any, taint: Callable[[str], str], name: str = "") -> Any:
    """Return a copy in which a script follows every text of an author."""
    if name in KEPT:
        return value
    if isinstance(value, Text):
        return Text(taint(value), value.at)
    if is_dataclass(value) and not isinstance(value, type):
        changed = {
            one.name: poisoned(getattr(value, one.name), taint, one.name)
            for one in fields(value)
            if one.init
        }
        return replace(value, **changed)
    if isinstance(value, tuple) and not hasattr(value, "_fields"):
        return tuple(poisoned(one, taint, name) for one in value)
    if isinstance(value, Mapping):
        return {key: poisoned(one, taint, name) for key, one in value.items()}
    return value


@pytest.fixture(scope="module")
def hostile(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build the complete shop with the corpus in every text."""
    folder = tmp_path_factory.mktemp("hostile")
    (folder / "shop").mkdir()
    turn = iter(range(10**9))

    def taint(text: str) -> str:
        return f"{text} {CORPUS[next(turn) % len(CORPUS)]}"

    library, _ = read_library(SHOP)
    library = poisoned(library, taint)
    pictures = Path("kb") / "how-to" / "pictures"
    shutil.copytree(SHOP / pictures, folder / "shop" / pictures)
    articles = {id_: with_corpus(one) for id_, one in library.how_tos.items()}
    library = replace(library, how_tos=articles)

    def tree_of(id_: str) -> Any:
        if procedure := procedure_named(library, id_):
            return procedure.tree  # poisoned with the library
        tree, _ = read_tree(SHOP, SHOP / library.trees[id_].file)
        return poisoned(tree, taint)

    with temporary() as cache:
        site = SiteInput(folder / "shop", cache, library, tree_of, prints=False)
        build_site(site, folder / "site")
    return folder / "site"


def with_corpus(article: HowTo) -> HowTo:
    """Write the whole corpus into the body of an article."""
    return replace(article, body=article.body + "\n\n" + "\n\n".join(CORPUS) + "\n")


def test_nothing_that_an_author_writes_runs(hostile: Path, chromium: Browser) -> None:
    """No script of the corpus runs on any page, and the policy has nothing to block."""
    context = chromium.new_context()
    page = context.new_page()
    messages: list[str] = []
    page.on("console", lambda message: messages.append(f"{page.url}: {message.text}"))
    page.on("pageerror", lambda error: messages.append(f"{page.url}: {error}"))
    page.on("dialog", lambda dialog: messages.append(f"{page.url}: {dialog.message}"))
    count = 0
    for file in sorted(hostile.rglob("*.html")):
        if file.name not in LEFT_OUT and file.parent.name != "rules":
            page.goto(file.as_uri(), wait_until="domcontentloaded")
            count += page.evaluate("document.body.textContent.includes('globalThis.ran')")
            assert page.evaluate("globalThis.ran") is None, file
            active = "script:not([src]), base, style, [onerror], [onfocus], [onload]"
            active += ", iframe:not([src$='/assets/store.html'])"  # our own
            assert page.locator(active).count() == 0, file
            assert page.locator("[href^='javascript:' i]").count() == 0, file
    assert count > 50, "the corpus has to be on the pages for this to mean anything"
    assert [line for line in messages if "ERR_FILE_NOT_FOUND" not in line] == []  # names of no file
    context.close()


def test_the_search_runs_nothing(hostile: Path, chromium: Browser) -> None:
    """The data of the search is data, and its hits are text."""
    context = chromium.new_context()
    page = context.new_page()
    page.goto((hostile / "index.html").as_uri())
    for words in ("battery light", "U0131", "<script>globalThis.ran=1</script>"):
        page.fill("#find input", words)
        page.wait_for_timeout(400)
        assert page.evaluate("globalThis.ran") is None
        assert page.evaluate("document.querySelectorAll('#find script, #find img').length") == 0
    context.close()


def test_text_is_shown_as_written(hostile: Path) -> None:
    """Text is escaped exactly once."""
    text = (hostile / "trees" / "charging" / "battery-lamp.html").read_text("utf-8")
    assert "&lt;script&gt;globalThis" in text
    assert "&amp;lt;script&amp;gt;" in text  # from the text that was written so
    assert "&amp;amp;lt;" not in text
