"""The build of the site: what is made, what is kept; the same files give the same bytes."""

import re
from collections.abc import Callable
from datetime import date
from functools import partial
from pathlib import Path

import pytest

from builder.cache.database import cache_file, opened
from builder.check.unchecked_library import read_library
from builder.reader.trees import tree_of
from builder.site.build_site import SiteInput, build_site

from .conftest import build_shop

Build = Callable[[Path], Path]


def contents(folder: Path) -> dict[str, bytes]:
    """Return every file of a folder with its bytes."""
    files = (file for file in folder.rglob("*") if file.is_file())
    return {file.relative_to(folder).as_posix(): file.read_bytes() for file in files}


def test_a_tree_gets_a_page_with_an_anchor_for_every_step(shop: Path, build: Build) -> None:
    """Each step of a tree can be sent as an address."""
    page = (build(shop) / "trees" / "horn" / "silent.html").read_text()
    assert page.count('id="step-') >= 3
    assert "<title>" in page


def test_two_builds_of_the_same_files_give_the_same_bytes(shop: Path, build: Build) -> None:
    """A second build changes nothing, with the work folder or without it."""
    first = contents(build(shop))
    again = contents(build(shop))
    cache_file(shop).unlink()
    afresh = contents(build(shop))
    assert first == again == afresh


def test_a_changed_tree_is_built_as_a_full_build_would(shop: Path, build: Build) -> None:
    """Building only what changed gives the bytes of a full build."""
    build(shop)
    tree = shop / "trees" / "horn" / "silent.yml"
    tree.write_text(tree.read_text().replace("title: ", "title: Still ", 1))
    quick = contents(build(shop))
    cache_file(shop).unlink()
    assert quick == contents(build(shop))
    assert b"Still " in quick["trees/horn/silent.html"]


def test_a_folder_with_other_files_is_not_replaced(shop: Path, tmp_path: Path) -> None:
    """Whoever mistypes the folder loses nothing."""
    (tmp_path / "letters").mkdir()
    (tmp_path / "letters" / "one.txt").write_text("dear", "utf-8")
    with pytest.raises(FileExistsError):
        build_shop(shop, tmp_path / "letters")
    assert (tmp_path / "letters" / "one.txt").read_text("utf-8") == "dear"


def test_a_removed_tree_leaves_the_site(shop: Path, build: Build) -> None:
    """What is no longer in the shop is no longer in the site, and everything else is kept."""
    before = contents(build(shop))
    (shop / "trees" / "horn" / "silent.yml").unlink()
    after = contents(build(shop))
    assert "trees/horn/silent.html" not in after
    assert before.keys() - after.keys() <= {"trees/horn/silent.html", "during/parked.html"}


def test_what_the_shop_says_of_its_site_stands_on_every_page_as_text(
    shop: Path, build: Build
) -> None:
    """The copyright line is at the foot, escaped once; a template in it stays text."""
    settings = shop / "site_config" / "mkdocs.yml"
    settings.write_text('copyright: "<b>Osei & Lind {{ 7 * 7 }}"\nsite_author: R. Osei\n', "utf-8")
    page = (build(shop) / "trees" / "horn" / "silent.html").read_text("utf-8")
    assert "<p>&lt;b&gt;Osei &amp; Lind {{ 7 * 7 }}</p>" in page
    assert '<meta name="author" content="R. Osei">' in page


def test_a_retired_tree_keeps_its_address(shop: Path, build: Build) -> None:
    """Whoever opens an old address is told what to use instead, at every step's anchor."""
    tree = shop / "trees" / "horn" / "silent.yml"
    retired = "status: retired\nreplaced_by: wipers/stop-halfway"
    tree.write_text(tree.read_text().replace("status: ready", retired, 1))
    page = (build(shop) / "trees" / "horn" / "silent.html").read_text()
    assert 'href="../../trees/wipers/stop-halfway.html"' in page
    assert 'id="step-fuse"' in page


def test_no_date_of_the_build_is_in_the_site(shop: Path, build: Build) -> None:
    """Two builds on different days give the same bytes: no page knows what day it is."""
    today = date.today()
    for name, content in contents(build(shop)).items():
        assert today.isoformat().encode() not in content, name
        assert today.strftime("%d %B %Y").encode() not in content, name


def title(tree: Path, words: str) -> None:
    """Give a tree another title."""
    tree.write_text(re.sub(r"(?m)^title: .*$", f"title: {words}", tree.read_text("utf-8")), "utf-8")


def built_while_saving(shop: Path, save: Callable[[], None]) -> None:
    """Build the site, and save something once the library has been read."""
    library, _ = read_library(shop)
    save()

    with opened(shop) as cache:
        given = SiteInput(shop, cache, library, partial(tree_of, shop, library), prints=False)
        build_site(given, shop.parent / "site")


def test_a_tree_saved_during_a_build_and_put_back_shows_what_it_says(
    shop: Path, build: Build
) -> None:
    """A page made of a tree's next version is not kept for the one before."""
    tree = shop / "trees" / "horn" / "silent.yml"
    title(tree, "The first")
    built_while_saving(shop, lambda: title(tree, "The second"))
    title(tree, "The first")
    page = (build(shop) / "trees" / "horn" / "silent.html").read_text("utf-8")
    assert "The first" in page
    assert "The second" not in page


def test_knowledge_saved_during_a_build_comes_with_the_next(shop: Path, build: Build) -> None:
    """Pages made of the knowledge before a save are not kept for the knowledge after it."""
    file = shop / "kb" / "hazards.yml"
    new = re.sub(r"hazard: .*", "hazard: A new danger", file.read_text("utf-8"))
    built_while_saving(shop, lambda: file.write_text(new, "utf-8") and None)
    quick = contents(build(shop))
    cache_file(shop).unlink()
    assert quick == contents(build(shop))
    assert b"A new danger" in quick["trees/horn/silent.html"]
