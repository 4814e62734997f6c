"""A new shop passes the checks, and existing files stay as they are."""

from datetime import date
from pathlib import Path

import pytest

from builder.authoring.new_shop import new_shop
from builder.authoring.not_written import NotWritten
from builder.check.unchecked_library import read_library
from builder.graph.runs import with_runs
from builder.reader.trees import read_tree, tree_files
from builder.rules.shared.judge import judge, judge_library

TODAY = date(2026, 10, 1)


def test_a_new_shop_passes_and_is_empty(tmp_path: Path) -> None:
    """It has no findings, not even a warning, and no tree."""
    written = new_shop(tmp_path / "shop")
    assert isinstance(written, tuple)
    library, findings = read_library(tmp_path / "shop")
    assert [*findings, *judge_library(library, TODAY)] == []
    assert not library.trees
    assert library.systems
    assert library.hazards
    assert library.tools


def test_it_returns_every_file_that_it_wrote(tmp_path: Path) -> None:
    """The list of files is complete, and every file in it exists."""
    written = new_shop(tmp_path / "shop")
    there = {path for path in (tmp_path / "shop").rglob("*") if path.is_file()}
    assert set(written) == there
    assert tmp_path / "shop" / ".gitignore" in there
    assert tmp_path / "shop" / "site_config" / "shop.yml" in there


def test_it_may_share_a_folder_with_other_files(tmp_path: Path) -> None:
    """An empty repository, or one with a license in it, is fine."""
    (tmp_path / "LICENSE").write_text("ours")
    assert isinstance(new_shop(tmp_path), tuple)
    assert (tmp_path / "LICENSE").read_text() == "ours"


@pytest.mark.parametrize("name", ["kb/tools.yml", "site_config/shop.yml", "README.md"])
def test_it_overwrites_nothing(tmp_path: Path, name: str) -> None:
    """If one file is in the way, none is written."""
    (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
    (tmp_path / name).write_text("mine")
    refused = new_shop(tmp_path)
    assert isinstance(refused, NotWritten)
    assert name in refused.message
    assert refused.hint
    assert [path for path in tmp_path.rglob("*") if path.is_file()] == [tmp_path / name]
    assert (tmp_path / name).read_text() == "mine"


def test_a_folder_that_is_a_link_is_in_the_way(tmp_path: Path) -> None:
    """Writing through it would put the files somewhere else."""
    (tmp_path / "outside").mkdir()
    (tmp_path / "shop").mkdir()
    (tmp_path / "shop" / "kb").symlink_to(tmp_path / "outside")
    assert isinstance(new_shop(tmp_path / "shop"), NotWritten)
    assert list((tmp_path / "outside").iterdir()) == []


@pytest.mark.parametrize("name", [".", "kb"])
def test_a_file_where_a_folder_must_be_is_in_the_way(tmp_path: Path, name: str) -> None:
    """The message names it; it isn't an error of the system."""
    shop = tmp_path / "shop"
    if name != ".":
        shop.mkdir()
    (shop / name).write_text("mine") if name != "." else shop.write_text("mine")
    refused = new_shop(shop)
    assert isinstance(refused, NotWritten)
    assert str(shop / name) in refused.message


def test_a_link_to_nothing_is_in_the_way(tmp_path: Path) -> None:
    """Writing through it would create a file somewhere else."""
    (tmp_path / "kb").mkdir()
    (tmp_path / "kb" / "tools.yml").symlink_to(tmp_path / "elsewhere")
    assert isinstance(new_shop(tmp_path), NotWritten)
    assert not (tmp_path / "elsewhere").exists()


def test_a_second_start_changes_nothing(tmp_path: Path) -> None:
    """What the user has filled in is safe."""
    new_shop(tmp_path)
    settings = tmp_path / "site_config" / "shop.yml"
    settings.write_text("shop: Mine\n")
    assert isinstance(new_shop(tmp_path), NotWritten)
    assert settings.read_text() == "shop: Mine\n"


def test_the_examples_are_sound(tmp_path: Path) -> None:
    """Three trees and a procedure, without any finding, that use states of the vehicle."""
    new_shop(tmp_path, with_examples=True)
    library, mistakes = read_library(tmp_path)
    trees = [read_tree(tmp_path, path)[0] for path in tree_files(tmp_path)]
    assert len(trees) == 3
    assert len(library.procedures) == 1
    filled = [with_runs(tree, library.procedures) for tree in trees if tree]
    judged = [finding for tree in filled for finding in judge(tree, library)]
    assert [*mistakes, *judged, *judge_library(library, TODAY)] == []
    assert {need.condition for tree in filled for step in tree.steps.values()
            for need in step.needs} >= {"key-on", "engine-running", "unplugged"}  # fmt: skip
    assert any(step.run for tree in filled for step in tree.steps.values())
