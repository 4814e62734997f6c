"""`baytree review` compares the working tree with a revision of git."""

import json
import subprocess
from pathlib import Path

import pytest

from builder.commands.main import main

TREE = "trees/body/horn.yml"


def git(shop: Path, *words: str) -> None:
    """Run git as somebody."""
    who = ("-c", "user.name=R. Osei", "-c", "user.email=osei@shop.example")
    subprocess.run(["git", "-C", str(shop), *who, *words], check=True, capture_output=True)


@pytest.fixture
def shop(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Path:
    """Create a shop with examples, in a folder of a repository."""
    shop = tmp_path / "repository" / "our-shop"
    assert main(["start", str(shop), "--with-examples"]) == 0
    git_folder = shop.parent
    git(git_folder, "init", "-b", "main")
    git(git_folder, "add", "-A")
    git(git_folder, "commit", "-m", "Start")
    capsys.readouterr()
    return shop


def edit(shop: Path, old: str, new: str) -> None:
    """Replace a text in the horn's tree."""
    text = (shop / TREE).read_text("utf-8")
    assert old in text
    (shop / TREE).write_text(text.replace(old, new), "utf-8")


def reviewed(shop: Path, capsys: pytest.CaptureFixture[str], *words: str) -> str:
    """Return what the command prints."""
    assert main(["--shop", str(shop), "review", *words]) == 0
    return capsys.readouterr().out


def test_nothing_changed_is_said(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """An empty list is no empty page."""
    assert reviewed(shop, capsys).strip() == "No tree says anything else than before."
    assert json.loads(reviewed(shop, capsys, "--format", "json")) == {"trees": {}}


def test_the_json_has_changes_and_effects(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Each is a kind, a step and a message, under the ID of its tree."""
    edit(shop, "{yes: horn-fix, no: ask}", "{yes: ask, no: ask}")
    trees = json.loads(reviewed(shop, capsys, "--format", "json"))["trees"]
    assert list(trees) == ["body/horn"]
    assert trees["body/horn"]["changes"] == [
        {"kind": "branch changed", "step": "horn",
         "message": "`yes` leads to `ask`, was `horn-fix`"},
    ]  # fmt: skip
    kinds = [effect["kind"] for effect in trees["body/horn"]["effects"]]
    assert "fix out of reach" in kinds


def test_the_base_is_where_the_main_branch_was_left(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A commit on the branch belongs to the change; one that is named doesn't."""
    git(shop, "switch", "-c", "horn")
    edit(shop, "minutes: 3", "minutes: 30")
    git(shop, "commit", "-am", "Longer")
    edit(shop, "Ask the foreman", "Ask Kim")
    assert reviewed(shop, capsys).count("changed: `") == 2
    assert reviewed(shop, capsys, "HEAD").count("changed: `") == 1


def test_markdown_has_a_heading_for_each_tree(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """It is pasted into a pull request."""
    edit(shop, "minutes: 3", "minutes: 30")
    out = reviewed(shop, capsys, "--format", "markdown")
    assert "### body/horn\n\n- minutes changed: `fuse`:" in out
    assert "In the bay:" in out


@pytest.mark.parametrize("base", ["nowhere", "--output=x", "HEAD:trees"])
def test_a_revision_that_is_none_is_said(
    shop: Path, capsys: pytest.CaptureFixture[str], base: str
) -> None:
    """Nothing is run, written or compared."""
    assert main(["--shop", str(shop), "review", "--", base]) == 2
    told = capsys.readouterr().err
    assert f"there is no revision `{base}`" in told
    assert "branches and tags: `" in told


def test_without_a_repository_it_says_so(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """A folder on a memory stick has no revisions."""
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path))
    assert main(["start", str(tmp_path / "shop")]) == 0
    assert main(["--shop", str(tmp_path / "shop"), "review"]) == 2
    assert "not in a git repository" in capsys.readouterr().err


def test_a_link_in_the_revision_is_left_out(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """It could lead out of the shop; in the working tree the check refuses it, too."""
    outside = shop.parent / "outside.yml"
    outside.write_text("title: Secret\nsymptom: [secret]\nsteps: {}\n", "utf-8")
    (shop / "trees/body/other.yml").symlink_to(outside)
    git(shop, "add", "-A")
    git(shop, "commit", "-m", "Link")
    (shop / "trees/body/other.yml").unlink()
    (shop / "trees/body/other.yml").write_text("title: Plain\n", "utf-8")
    assert "ecret" not in reviewed(shop, capsys, "HEAD")
    assert "tree added" in reviewed(shop, capsys, "HEAD")


def test_the_page_is_one_file(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """It has the chart of the changed tree, and goes where it is asked for."""
    edit(shop, "minutes: 3", "minutes: 30")
    file = shop.parent / "review.html"
    out = reviewed(shop, capsys, "--format", "html", "--out", str(file))
    assert out.strip().endswith("review.html")
    page = file.read_text("utf-8")
    assert page.startswith("<!doctype html>")
    assert "CHANGED: minutes" in page
