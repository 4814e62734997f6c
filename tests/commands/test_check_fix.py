"""`baytree check --fix` writes what has one right answer, and `--dry-run` only shows it."""

import json
import shutil
from pathlib import Path

import pytest

from builder.authoring.corrected_shop import corrected_files, write_corrected
from builder.commands.main import main
from builder.model.finding import Finding, Severity, edit_in_line, with_edit
from builder.model.text import Position

SHOP = Path(__file__).parents[1] / "shop"
TREE = "trees/wipers/stop-halfway.yml"
HORN = "trees/horn/silent.yml"
SLIPS = {
    TREE: [("    minutes: 6", "    minutes: 6 min   # by hand"), ("park-switch\n", "park-swich\n")],
    HORN: [("      - result: sound\n        branch: click", "      - result: sound branch: click"),
           ("codes:", "cods:"), ("branch: short", "branch: shorted-wire")],
}  # fmt: skip


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """Return a shop with slips in two trees; one has Windows line ends, and none at its end."""
    shutil.copytree(SHOP, tmp_path / "shop")
    for file, slips in SLIPS.items():
        text = (tmp_path / "shop" / file).read_text("utf-8")
        for right, typed in slips:
            text = text.replace(right, typed, 1)
        content = text.rstrip("\n").replace("\n", "\r\n") if file == HORN else text
        (tmp_path / "shop" / file).write_bytes(content.encode())
    return tmp_path / "shop"


def contents(shop: Path) -> dict[Path, bytes]:
    """Return every file of a shop with its bytes."""
    return {path: path.read_bytes() for path in shop.rglob("*") if path.is_file()}


def run(shop: Path, *words: str) -> int:
    """Check on the day of the tests."""
    return main(["--shop", str(shop), "check", "--today", "2026-10-01", *words])


def test_fixed_lines_are_told_and_the_rest_is_reported(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A line for each, then what is left; comments, line ends and all other files stay."""
    before = contents(shop)
    assert run(shop, "--fix") == 1
    out = capsys.readouterr().out
    assert f"{TREE}:35: fixed: `minutes` must be a number of minutes, not `6 min`; " in out
    assert "now `minutes: 6   # by hand`\n" in out
    assert f"{HORN}:24: fixed: `branch` needs a line of its own; now `branch: click`\n" in out
    assert "step `shorted-wire` doesn't exist" in out
    after = contents(shop)
    changed = {path.relative_to(shop).as_posix() for path in before if before[path] != after[path]}
    assert changed == {TREE, HORN}
    assert before.keys() == after.keys()
    horn = after[shop / HORN]
    assert horn.count(b"\r\n") == horn.count(b"\n")
    assert not horn.endswith(b"\n")
    assert run(shop, "--fix", "--dry-run", "--format", "json") == 1
    assert json.loads(capsys.readouterr().out)["fixed"] == []


def test_a_dry_run_shows_a_diff_and_writes_nothing(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Only of the files that are named; the diff alone is on the standard output."""
    before = contents(shop)
    assert run(shop, TREE, "--fix", "--dry-run") == 1
    shown = capsys.readouterr()
    lines = shown.out.splitlines()
    assert lines[:2] == [f"--- a/{TREE}", f"+++ b/{TREE}"]
    assert [line for line in lines[2:] if line[0] in "+-"] == [
        "-    minutes: 6 min   # by hand", "+    minutes: 6   # by hand",
        "-        branch: park-swich", "+        branch: park-switch",
    ]  # fmt: skip
    assert shown.err == "baytree: note: 2 mistakes would be fixed; nothing was written\n"
    assert contents(shop) == before
    assert run(shop, "--dry-run") == 2


def test_a_dry_run_says_what_stays_with_the_author(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """What has no one right answer is counted, so that nobody takes a dry run for all of it."""
    text = (shop / TREE).read_text("utf-8")
    (shop / TREE).write_text(text.replace("weight: 5", "weight: often"), "utf-8")
    run(shop, TREE, "--fix", "--dry-run")
    assert "1 more finding is yours to decide" in capsys.readouterr().err


def test_json_has_edits_and_what_was_fixed(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The edit of a finding names the place and both texts; `fixed` is there if it's asked for."""
    run(shop, TREE, "--format", "json")
    plain = json.loads(capsys.readouterr().out)
    assert "fixed" not in plain
    assert plain["findings"][0]["edit"] == {
        "line": 35, "column": 14, "end_line": 35, "end_column": 19, "old": "6 min", "new": "6",
    }  # fmt: skip
    assert run(shop, TREE, "--fix", "--format", "json") == 0
    assert [(one["line"], one["now"]) for one in json.loads(capsys.readouterr().out)["fixed"]] == [
        (35, "minutes: 6   # by hand"), (44, "branch: park-switch"),
    ]  # fmt: skip


def test_a_file_that_changed_meanwhile_is_left_alone(shop: Path) -> None:
    """What the author saves while the check runs isn't overwritten."""
    edit = edit_in_line(TREE, 35, 14, "6 min", "6")
    finding = with_edit(a_finding(35, "minutes"), edit)
    files = corrected_files(shop, [finding], lambda _copy: [])
    (shop / TREE).write_text("title: something new\n")
    assert [*write_corrected(shop, files)] == [TREE]
    assert (shop / TREE).read_text() == "title: something new\n"


def test_an_edit_that_makes_it_worse_is_left_out(shop: Path) -> None:
    """Of two edits the one is kept that brings no new finding; only the copy was tried."""
    before = contents(shop)
    good = with_edit(a_finding(1, "comment"), edit_in_line(TREE, 1, 1, "#", "##"))
    bad = with_edit(a_finding(35, "minutes"), edit_in_line(TREE, 35, 14, "6 min", "6"))

    def judge(copy: Path) -> list[Finding]:
        text = (copy / TREE).read_text("utf-8")
        left = [] if text.startswith("##") else [good]
        return [*left, bad if "6 min" in text else a_finding(40, "worse")]

    [corrected] = corrected_files(shop, [good, bad], judge)
    assert [one.finding for one in corrected.corrections] == [good]
    assert contents(shop) == before


def a_finding(line: int, message: str) -> Finding:
    """Return a finding of a rule at the start of a line."""
    return Finding("slang", Severity.WARNING, Position(TREE, line, 1, line, 2), message)


def test_no_file_is_written_through_a_link(shop: Path) -> None:
    """A tree behind a link is reported, and the file that it leads to stays."""
    (shop / "trees/wipers").rename(shop / "wipers")
    (shop / "trees/wipers").symlink_to(shop / "wipers")
    before = contents(shop)
    run(shop, "--fix")
    after = contents(shop)
    assert before[shop / "wipers/stop-halfway.yml"] == after[shop / "wipers/stop-halfway.yml"]
