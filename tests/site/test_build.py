"""The build of the site: what is made, what is kept; the same files give the same bytes."""

from collections.abc import Callable
from pathlib import Path

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
    (shop.parent / "cache" / "kept.json").unlink()
    afresh = contents(build(shop))
    assert first == again == afresh


def test_a_changed_tree_is_built_as_a_full_build_would(shop: Path, build: Build) -> None:
    """Building only what changed gives the bytes of a full build."""
    build(shop)
    tree = shop / "trees" / "horn" / "silent.yml"
    tree.write_text(tree.read_text().replace("title: ", "title: Still ", 1))
    quick = contents(build(shop))
    (shop.parent / "cache" / "kept.json").unlink()
    assert quick == contents(build(shop))
    assert b"Still " in quick["trees/horn/silent.html"]
