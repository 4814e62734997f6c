"""The build of the site: the same files give the same bytes, from scratch or from the cache."""

import re
from collections.abc import Callable
from datetime import date
from functools import partial
from pathlib import Path

import pytest

from builder.cache.database import cache_file, opened
from builder.check.filled_tree import tree_of
from builder.check.unchecked_library import read_library
from builder.site.build_site import SiteInput, build_site

from .conftest import build_shop

Build = Callable[[Path], Path]


def contents(folder: Path) -> dict[str, bytes]:
    """Return every file of a folder with its bytes."""
    files = (file for file in folder.rglob("*") if file.is_file())
    return {file.relative_to(folder).as_posix(): file.read_bytes() for file in files}


def test_a_tree_gets_a_page_with_an_anchor_for_every_step(shop: Path, build: Build) -> None:
    """Each step of a tree has an address that can be sent."""
    page = (build(shop) / "trees" / "horn" / "silent.html").read_text()
    assert page.count('id="step-') >= 3
    assert "<title>" in page


def test_two_builds_of_the_same_files_give_the_same_bytes(shop: Path, build: Build) -> None:
    """A second build changes nothing, with the cache or without it."""
    first = contents(build(shop))
    again = contents(build(shop))
    cache_file(shop).unlink()
    from_scratch = contents(build(shop))
    assert first == again == from_scratch


def test_a_changed_tree_gives_the_bytes_of_a_full_build(shop: Path, build: Build) -> None:
    """Building only what changed gives the same site."""
    build(shop)
    tree = shop / "trees" / "horn" / "silent.yml"
    tree.write_text(tree.read_text().replace("title: ", "title: Still ", 1))
    quick = contents(build(shop))
    cache_file(shop).unlink()
    assert quick == contents(build(shop))
    assert b"Still " in quick["trees/horn/silent.html"]


def test_a_folder_with_other_files_is_not_replaced(shop: Path, tmp_path: Path) -> None:
    """A mistyped folder loses nothing."""
    (tmp_path / "letters").mkdir()
    (tmp_path / "letters" / "one.txt").write_text("dear", "utf-8")
    with pytest.raises(FileExistsError):
        build_shop(shop, tmp_path / "letters")
    assert (tmp_path / "letters" / "one.txt").read_text("utf-8") == "dear"


def test_a_removed_tree_leaves_the_site(shop: Path, build: Build) -> None:
    """Its page goes, and every other page stays."""
    before = contents(build(shop))
    (shop / "trees" / "horn" / "silent.yml").unlink()
    after = contents(build(shop))
    assert "trees/horn/silent.html" not in after
    gone = {"trees/horn/silent.html", "walks/horn/silent.js", "during/parked.html"}
    assert before.keys() - after.keys() <= gone


def test_texts_of_the_shop_are_on_every_page_as_text(shop: Path, build: Build) -> None:
    """The copyright line is in the footer, escaped once; a template in it stays text."""
    settings = shop / "site_config" / "mkdocs.yml"
    settings.write_text('copyright: "<b>Osei & Lind {{ 7 * 7 }}"\nsite_author: R. Osei\n', "utf-8")
    page = (build(shop) / "trees" / "horn" / "silent.html").read_text("utf-8")
    assert "<p>&lt;b&gt;Osei &amp; Lind {{ 7 * 7 }}</p>" in page
    assert '<meta name="author" content="R. Osei">' in page


def test_a_retired_tree_keeps_its_address(shop: Path, build: Build) -> None:
    """The old address links to the replacement and still has every step's anchor."""
    tree = shop / "trees" / "horn" / "silent.yml"
    retired = "status: retired\nreplaced_by: wipers/stop-halfway"
    tree.write_text(tree.read_text().replace("status: ready", retired, 1))
    page = (build(shop) / "trees" / "horn" / "silent.html").read_text()
    assert 'href="../../trees/wipers/stop-halfway.html"' in page
    assert 'id="step-fuse"' in page


def test_no_date_of_the_build_is_in_the_site(shop: Path, build: Build) -> None:
    """Builds on different days give the same bytes."""
    today, files = date.today(), contents(build(shop))
    assert files
    for name, content in files.items():
        assert today.isoformat().encode() not in content, name
        assert today.strftime("%d %B %Y").encode() not in content, name


def title(tree: Path, words: str) -> None:
    """Give a tree another title."""
    tree.write_text(re.sub(r"(?m)^title: .*$", f"title: {words}", tree.read_text("utf-8")), "utf-8")


def built_while_saving(shop: Path, save: Callable[[], None]) -> None:
    """Build the site, and save something right after the library was read."""
    library, _ = read_library(shop)
    save()

    with opened(shop) as cache:
        site = SiteInput(shop, cache, library, partial(tree_of, shop, library), prints=False)
        build_site(site, shop.parent / "site")


def test_a_tree_saved_during_a_build_and_reverted_is_shown(shop: Path, build: Build) -> None:
    """A page of the saved version isn't cached for the reverted one."""
    tree = shop / "trees" / "horn" / "silent.yml"
    title(tree, "The first")
    built_while_saving(shop, lambda: title(tree, "The second"))
    title(tree, "The first")
    page = (build(shop) / "trees" / "horn" / "silent.html").read_text("utf-8")
    assert "The first" in page
    assert "The second" not in page


def test_knowledge_saved_during_a_build_comes_with_the_next(shop: Path, build: Build) -> None:
    """Pages from before the save aren't cached for the new knowledge."""
    file = shop / "kb" / "hazards.yml"
    new = re.sub(r"hazard: .*", "hazard: A new danger", file.read_text("utf-8"))
    built_while_saving(shop, lambda: file.write_text(new, "utf-8") and None)
    quick = contents(build(shop))
    cache_file(shop).unlink()
    assert quick == contents(build(shop))
    assert b"A new danger" in quick["trees/horn/silent.html"]
