"""A tree is named by its ID, its file, or its name alone; a slip is answered."""

import shutil
from pathlib import Path

import pytest

from builder.commands.main import main
from builder.commands.tree_names import tree_named
from builder.model.library import NotThereError

SHOP = Path(__file__).parents[1] / "shop"
IDS = ("horn/silent", "network/module-silent", "wipers/stop-halfway", "lights/silent")


@pytest.mark.parametrize("words", [
    "wipers/stop-halfway", "trees/wipers/stop-halfway.yml", "stop-halfway", "stop-halfway.yml",
    "/home/shop/trees/wipers/stop-halfway.yml", "wipers/stop-halfway.yaml",
    "trees\\wipers\\stop-halfway.yml",
])  # fmt: skip
def test_a_tree_is_understood_however_it_is_named(words: str) -> None:
    """What an editor, a shell, and a page's address show all lead to the tree."""
    assert tree_named(words, IDS) == "wipers/stop-halfway"


@pytest.mark.parametrize(("words", "meant"), [
    ("silent", ["horn/silent", "lights/silent"]),
    ("wiper/stop-halfways", ["wipers/stop-halfway"]),
    ("stop-halfwy", ["wipers/stop-halfway"]),
    ("wipers/stophalfway", ["wipers/stop-halfway"]),
    ("stop_halfway", ["wipers/stop-halfway"]),
])  # fmt: skip
def test_what_is_no_tree_is_answered_with_the_nearest(words: str, meant: list[str]) -> None:
    """Two trees of one name are both offered."""
    with pytest.raises(NotThereError) as error:
        tree_named(words, IDS)
    assert all(f"`{id_}`" in str(error.value) for id_ in meant)


def run(shop: Path, *words: str) -> int:
    """Run one command in a shop."""
    return main(["--shop", str(shop), *words])


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """Copy the shop of the tests, with a mistake in one tree."""
    shop = Path(shutil.copytree(SHOP, tmp_path / "shop"))
    file = shop / "trees/horn/silent.yml"
    file.write_text(file.read_text().replace("branch: click", "branch: clik"))
    return shop


@pytest.mark.parametrize("words", ["horn/silent", "silent", "trees/horn/silent.yml", "trees/horn"])
def test_a_check_of_one_tree_reports_its_findings(
    words: str, shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A folder stands for all files in it."""
    assert run(shop, "check", words, "--today", "2026-10-01") == 1
    assert "step `clik` doesn't exist" in capsys.readouterr().out


def test_a_tree_under_another_name_is_named(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A text editor saved it as `silent.yml.txt`: no other tree is offered in its place."""
    file = shop / "trees/horn/silent.yml"
    file.rename(file.with_suffix(".yml.txt"))
    assert run(shop, "check", "trees/horn/silent.yml") == 2
    assert "but `silent.yml.txt` beside it: rename it" in capsys.readouterr().err


@pytest.mark.parametrize(("words", "answer"), [
    (("check", "horn/silnt"), "did you mean `horn/silent`?"),
    (("check", "kb/toolz.txt"), "there is no file `kb/toolz.txt`"),
    (("minutes", "horn/silnt"), "did you mean `horn/silent`?"),
    (("walk", "horn/silnt"), "did you mean `horn/silent`?"),
    (("print", "horn/silnt"), "did you mean `horn/silent`?"),
    (("print", "--system", "horm"), "did you mean `horn`?"),
    (("print", "horn/silent", "--fix", "horn"), "add `--sheet customer`"),
    (("print", "horn/silent", "--fix", "hron", "--sheet", "customer"), "did you mean `horn`?"),
    (("rules", "reading-gaps"), "did you mean `reading-gap`"),
    (("schema", "tre"), "did you mean `tree`?"),
])  # fmt: skip
def test_a_slip_on_the_command_line_is_answered(
    words: tuple[str, ...], answer: str, shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The command says what to write, and ends with status 2."""
    assert run(shop, *words) == 2
    assert answer in capsys.readouterr().err


@pytest.mark.parametrize(("words", "right"), [
    ("11/29/2026", "2026-11-29"), ("Nov 29, 2026", "2026-11-29"), ("tomorrow", ""),
])  # fmt: skip
def test_a_day_in_another_form_is_answered_with_the_right_one(
    words: str, right: str, shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The author's own day, written as the command takes it."""
    with pytest.raises(SystemExit):
        run(shop, "check", "--today", words)
    assert f"write year, month and day: {right}" in capsys.readouterr().err
