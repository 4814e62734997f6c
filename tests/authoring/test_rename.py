"""A step or a tree has its new name wherever it was named, and nothing else is touched."""

import shutil
from pathlib import Path

import pytest

from builder.authoring.not_written import NotWritten
from builder.authoring.rename import rename_step, rename_tree
from builder.check.filled_knowledge import filled_knowledge
from builder.check.unchecked_library import read_library
from builder.reader.trees import read_tree, tree_files, tree_id
from builder.review.compare_shops import compare_file

SAMPLES = Path(__file__).parents[1] / "samples"
TREES = [tree_id(path.relative_to(SAMPLES).as_posix()) for path in tree_files(SAMPLES)]


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """Copy the samples."""
    return Path(shutil.copytree(SAMPLES, tmp_path / "shop"))


def text_of(shop: Path) -> str:
    """Return all files of a shop as one text."""
    return "\n".join(path.read_text("utf-8") for path in sorted(shop.rglob("*.yml")))


def test_a_step_keeps_everything_but_its_name(shop: Path) -> None:
    """Of each tree the first, a middle and the last step: the review sees nothing but the name."""
    library = filled_knowledge(SAMPLES)[0]
    for tree in TREES:
        file = f"trees/{tree}.yml"
        before = (shop / file).read_text("utf-8")
        read, _ = read_tree(SAMPLES, SAMPLES / file)
        assert read
        names = list(read.steps)
        for name in (names[0], names[len(names) // 2], names[-1]):
            assert not isinstance(rename_step(shop, tree, name, "zebra-9"), NotWritten)
            review = compare_file(SAMPLES, shop, file, (library, library))
            kinds = [(one.kind, one.step) for one in review.changes]
            assert kinds == [("step renamed", "zebra-9")], (tree, name, review.changes)
            assert {effect.kind for effect in review.effects} <= {"review is older"}
            assert not isinstance(rename_step(shop, tree, "zebra-9", name), NotWritten)
            assert (shop / file).read_text("utf-8") == before


def test_a_handoff_to_the_step_follows(shop: Path) -> None:
    """Another tree leads into the middle of this one."""
    path = shop / "trees/horn/silent.yml"
    text = path.read_text("utf-8")
    assert "dark: ask" in text
    path.write_text(text.replace("dark: ask", "dark: charging/lamp-on#belt"), "utf-8")
    rename_step(shop, "charging/lamp-on", "belt", "drive-belt")
    assert "charging/lamp-on#drive-belt" in path.read_text("utf-8")


@pytest.mark.parametrize("tree", ["charging/overcharge", "network/module-silent"])
def test_a_tree_moves_with_all_that_lead_to_it(shop: Path, tree: str) -> None:
    """No branch leads to nowhere, and the old ID isn't named any more in any branch."""
    before = read_library(shop)[1]
    new = f"{tree.split('/')[0]}/zebra-9"
    assert not isinstance(rename_tree(shop, tree, new), NotWritten)
    library, after = read_library(shop)
    assert new in library.trees
    assert tree not in library.trees
    assert len(after) == len(before)
    leads = {id_ for listing in library.listings.values() for id_, _ in listing.leads_to}
    assert tree not in leads


def test_a_name_that_is_taken_is_refused(shop: Path) -> None:
    """Nothing is written."""
    before = text_of(shop)
    assert isinstance(rename_step(shop, "charging/lamp-on", "belt", "codes"), NotWritten)
    assert isinstance(rename_step(shop, "charging/lamp-on", "bolt", "codes-2"), NotWritten)
    assert isinstance(rename_step(shop, "charging/lamp-on", "belt", "a b"), NotWritten)
    assert isinstance(rename_tree(shop, "charging/lamp-on", "horn/silent"), NotWritten)
    assert isinstance(rename_tree(shop, "charging/lamp-on", "../out"), NotWritten)
    assert text_of(shop) == before


def test_a_byte_order_mark_stays(shop: Path) -> None:
    """Some editors write one, and the file is the author's."""
    path = shop / "trees/charging/lamp-on.yml"
    before = path.read_bytes()
    path.write_bytes(b"\xef\xbb\xbf" + before)
    assert not isinstance(rename_step(shop, "charging/lamp-on", "belt", "zebra-9"), NotWritten)
    assert path.read_bytes().startswith(b"\xef\xbb\xbf")
    rename_step(shop, "charging/lamp-on", "zebra-9", "belt")
    assert path.read_bytes() == b"\xef\xbb\xbf" + before
