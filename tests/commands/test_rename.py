"""`baytree rename` prints the files that it wrote, or why it wrote none."""

import shutil
from pathlib import Path

import pytest

from builder.commands.main import main

SHOP = Path(__file__).parents[1] / "shop"


def test_a_step_and_a_tree_are_renamed(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The step by `tree#step`, the tree by its ID or its name alone."""
    shop = ["--shop", str(tmp_path)]
    assert main(["start", str(tmp_path), "--with-examples"]) == 0
    assert main([*shop, "rename", "horn#fuse", "horn-fuse"]) == 0
    assert "trees/body/horn.yml" in capsys.readouterr().out
    assert "  horn-fuse:\n" in (tmp_path / "trees/body/horn.yml").read_text("utf-8")
    assert main([*shop, "rename", "horn", "body/no-horn"]) == 0
    assert (tmp_path / "trees/body/no-horn.yml").exists()
    assert main([*shop, "check", "--strict"]) == 0
    assert main([*shop, "rename", "no-horn#fuse", "other"]) == 2
    assert "has no step `fuse`" in capsys.readouterr().err


def test_an_article_is_renamed(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """By its file, or as links have it."""
    shop = ["--shop", str(tmp_path)]
    assert main(["start", str(tmp_path)]) == 0
    assert main([*shop, "new", "how-to", "drop"]) == 0
    assert main([*shop, "rename", "kb/how-to/drop.md", "how-to/voltage-drop"]) == 0
    assert (tmp_path / "kb/how-to/voltage-drop.md").exists()
    assert main([*shop, "rename", "how-to/drop", "other"]) == 2
    assert "there is no article `drop`" in capsys.readouterr().err


def test_a_procedure_is_renamed(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """In its file's name, and in every step and every proof that runs it."""
    shop = ["--shop", str(shutil.copytree(SHOP, tmp_path / "shop"))]
    assert main([*shop, "rename", "procedures/first-stop", "stop-test"]) == 0
    assert "kb/procedures/stop-test.yml" in capsys.readouterr().out
    assert main([*shop, "check", "--strict", "--today", "2026-10-01"]) == 0
    assert main([*shop, "rename", "procedures/stp-test", "other"]) == 2
    assert "did you mean `stop-test`?" in capsys.readouterr().err
