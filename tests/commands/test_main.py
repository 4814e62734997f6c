"""The command line keeps its contract: words, JSON and exit status."""

import argparse
import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from builder.commands.main import COMMANDS, Command, main
from builder.reader.trees import tree_files
from builder.site.manifest import write_manifest

SHOP = Path(__file__).parents[1] / "shop"
TODAY = "2026-10-01"


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """A copy of the tests' shop."""
    return Path(shutil.copytree(SHOP, tmp_path / "shop"))


def broken(shop: Path) -> Path:
    """Send one branch of the copy to nowhere."""
    tree = shop / "trees/wipers/stop-halfway.yml"
    text = tree.read_text(encoding="utf-8")
    tree.write_text(text.replace("branch: linkage", "branch: linkadge"), encoding="utf-8")
    return tree


def stale(shop: Path) -> list[str]:
    """Return the arguments of a check that finds nothing but warnings."""
    return ["--shop", str(shop), "check", "--today", "2031-01-01"]


def test_a_sound_shop_exits_with_0(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Nothing to say is said in one line."""
    assert main(["--shop", str(shop), "check", "--strict", "--today", TODAY]) == 0
    assert capsys.readouterr().out == "10 trees, 0 errors, 0 warnings\n"


def test_an_error_exits_with_1(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A pull request with an unsound tree is refused."""
    broken(shop)
    assert main(["--shop", str(shop), "check", "--today", TODAY]) == 1
    assert "step `linkadge` doesn't exist" in capsys.readouterr().out


def test_a_warning_exits_with_1_only_when_strict(shop: Path) -> None:
    """Old reviews are told, but stop only whoever asks for it."""
    assert main(stale(shop)) == 0
    assert main([*stale(shop), "--strict"]) == 1


FORMATS = ("text", "json", "sarif", "github")


@pytest.mark.parametrize("format_", FORMATS)
def test_odd_files_are_told_and_never_shown(
    shop: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], format_: str
) -> None:
    """Links, pipes and names in another encoding; no line of a file outside is written out."""
    folder = shop / "trees/wipers"
    (tmp_path / "outside").write_text("secret", "utf-8")
    (folder / "out.yml").symlink_to(tmp_path / "outside")
    (folder / "gone.yml").symlink_to("nowhere.yml")
    os.mkfifo(folder / "pipe.yml")
    (folder / "ring.yml").symlink_to("ring.yml")
    Path(os.fsdecode(os.fsencode(folder) + b"/b\xff.yml")).write_text("x", "utf-8")
    assert main(["--shop", str(shop), "check", "--format", format_, "--today", TODAY]) == 1
    shown = capsys.readouterr().out
    assert all(name in shown for name in ("out.yml", "gone.yml", "pipe.yml", "ring.yml"))
    assert "secret" not in shown


def test_a_folder_without_a_shop_exits_with_2(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Whoever stands in the wrong folder is told so."""
    assert main(["--shop", str(tmp_path), "check"]) == 2
    assert "no shop found" in capsys.readouterr().err


def test_a_missing_file_exits_with_2(shop: Path) -> None:
    """A file that is not there is no sound file."""
    assert main(["--shop", str(shop), "check", str(shop / "trees/none.yml")]) == 2


@pytest.mark.parametrize("target", ["ring.yml", "nowhere.yml", "../../../outside.yml"])
def test_a_named_link_to_nowhere_exits_with_2(
    shop: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], target: str
) -> None:
    """A link to itself, to nothing or out of the shop gets a plain message, not a bug report."""
    (tmp_path / "outside.yml").write_text("title: Outside\n", "utf-8")
    link = shop / "trees/wipers/ring.yml"
    link.symlink_to(target)
    assert main(["--shop", str(shop), "check", str(link)]) == 2
    message = capsys.readouterr().err
    assert message.startswith(f"baytree: {link} ")
    assert "bug" not in message


@pytest.mark.parametrize("link", ["prints", "prints/horn", "prints/horn/silent.pdf"])
def test_prints_are_never_written_through_a_link(
    shop: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], link: str
) -> None:
    """A link in a pull request writes no file outside the shop."""
    link_out(shop / link, tmp_path / "outside")
    assert main(["--shop", str(shop), "print", "horn/silent"]) == 2
    assert "is a link" in capsys.readouterr().err
    assert list((tmp_path / "outside").iterdir()) == []


@pytest.mark.parametrize("link", [".schemas", ".schemas/tree.schema.json"])
def test_schemas_are_never_written_through_a_link(
    shop: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], link: str
) -> None:
    """A link in a pull request writes no file outside the shop."""
    link_out(shop / link, tmp_path / "outside")
    assert main(["--shop", str(shop), "schema"]) == 2
    assert "is a link" in capsys.readouterr().err
    assert list((tmp_path / "outside").iterdir()) == []


def link_out(link: Path, outside: Path) -> None:
    """Put a link to a folder outside, or to a new file in it, where a command writes."""
    outside.mkdir()
    link.parent.mkdir(parents=True, exist_ok=True)
    link.symlink_to(outside / link.name if link.suffix else outside)


def test_the_json_of_check(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The keys that other programs rely on, with lines and columns from 1."""
    broken(shop)
    main(["--shop", str(shop), "check", "--format", "json", "--today", TODAY])
    told = json.loads(capsys.readouterr().out)
    assert told["version"] == 1
    assert told["summary"] == {"trees": 10, "errors": 1, "warnings": 0}
    (finding,) = told["findings"]
    assert set(finding) >= {"rule", "severity", "file", "line", "column", "end_line", "end_column",
                            "message", "hint"}  # fmt: skip
    assert finding["rule"] == "branch-to-nowhere"
    assert finding["file"] == "trees/wipers/stop-halfway.yml"
    lines = (shop / finding["file"]).read_text(encoding="utf-8").split("\n")
    marked = lines[finding["line"] - 1][finding["column"] - 1 : finding["end_column"] - 1]
    assert marked == "linkadge"


def test_a_file_named_is_the_only_one_told_of(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A hook that hands over one file hears of that file."""
    broken(shop)
    other = shop / "trees/horn/silent.yml"
    assert main(["--shop", str(shop), "check", "--today", TODAY, str(other)]) == 0
    told = capsys.readouterr().out
    assert "linkadge" not in told
    assert "1 more finding is in other files" in told
    assert main(["--shop", str(shop), "check", "--today", TODAY, str(broken(shop))]) == 1
    assert "linkadge" in capsys.readouterr().out


def test_a_finding_that_points_at_the_file_named_is_told(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A closed job is judged in its tree; who mistyped a reading in it hears of it all the same."""
    job = shop / "kb/cases/2026-05-d3d8fe5d.yml"
    job.write_text(job.read_text("utf-8").replace("0.21 V", "2.1 V"), encoding="utf-8")
    assert main(["--shop", str(shop), "check", "--today", TODAY, str(job)]) == 1
    assert "[closed-job]" in capsys.readouterr().out


def test_sarif_and_annotations_name_files_from_the_repository(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Also where the shop is a folder of the repository."""
    broken(shop)
    (shop.parent / ".git").mkdir()
    main(["--shop", str(shop), "check", "--format", "sarif", "--today", TODAY])
    (run,) = json.loads(capsys.readouterr().out)["runs"]
    place = run["results"][0]["locations"][0]["physicalLocation"]["artifactLocation"]
    assert place["uri"] == "shop/trees/wipers/stop-halfway.yml"
    main(["--shop", str(shop), "check", "--format", "github", "--today", TODAY])
    assert "file=shop/trees/wipers/stop-halfway.yml" in capsys.readouterr().out


def test_a_build_refuses_a_broken_shop_and_keeps_the_old_site(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Nobody in the bay loses yesterday's site to today's slip."""
    (shop / "site").mkdir()
    (shop / "site/index.html").write_text("yesterday", encoding="utf-8")
    write_manifest(shop / "site")
    broken(shop)
    assert main(["--shop", str(shop), "build", "--today", TODAY]) == 1
    assert (shop / "site/index.html").read_text(encoding="utf-8") == "yesterday"
    assert "previous site is unchanged" in capsys.readouterr().err


def test_a_build_names_the_file_that_is_in_its_way(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A website of the user's own is told of, and stays as it is."""
    (shop / "site").mkdir()
    write_manifest(shop / "site")
    (shop / "site/CNAME").write_text("bay.example", encoding="utf-8")
    assert main(["--shop", str(shop), "build", "--today", TODAY]) == 2
    assert (shop / "site/CNAME").read_text(encoding="utf-8") == "bay.example"
    assert "`CNAME`" in capsys.readouterr().err


@pytest.mark.parametrize("folder", ["trees", "kb/how-to", "."])
def test_a_build_never_asks_to_delete_the_shop(
    shop: Path, folder: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """A folder with the shop's own files is refused by what it holds."""
    assert main(["--shop", str(shop), "build", "--out", str(shop / folder)]) == 2
    told = capsys.readouterr().err
    assert "the shop's own files" in told
    assert "delete" not in told


def test_a_word_too_many_is_named(capsys: pytest.CaptureFixture[str]) -> None:
    """The usage that follows is that of the command, not of all of them."""
    with pytest.raises(SystemExit):
        main(["minutes", "lamp", "on"])
    told = capsys.readouterr().err
    assert "`on` is too much" in told
    assert "usage: baytree minutes" in told


def test_minutes_in_json(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Expected, shortest, longest, and each fix."""
    assert main(["--shop", str(shop), "minutes", "horn/silent", "--format", "json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert told["shortest"] <= told["expected"] <= told["longest"]
    assert set(told["fixes"]) == {"short", "horn"}
    assert set(told["fixes"]["horn"]) == {"chance", "minutes"}


def test_a_tree_that_is_not_there_exits_with_2(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """In words, never a traceback."""
    assert main(["--shop", str(shop), "minutes", "horn/none"]) == 2
    assert main(["--shop", str(shop), "print", "horn/none"]) == 2
    assert main(["--shop", str(shop), "print", "horn/silent", "--sheet", "customer",
                 "--fix", "none"]) == 2  # fmt: skip
    assert capsys.readouterr().err.count("\n") == 3


def test_prints_are_files_of_their_tree(shop: Path) -> None:
    """One file a tree and sheet, one book a system."""
    out = ["--out", str(shop / "out")]
    assert main(["--shop", str(shop), "print", "--all", *out]) == 0
    assert main(["--shop", str(shop), "print", "horn/silent", "--sheet", "bench", *out]) == 0
    assert main(["--shop", str(shop), "print", "horn/silent", "--sheet", "customer", *out]) == 0
    assert main(["--shop", str(shop), "print", "--system", "horn", *out]) == 0
    made = {path.relative_to(shop / "out").as_posix() for path in (shop / "out").rglob("*.pdf")}
    trees = (path.relative_to(shop / "trees") for path in tree_files(shop))
    every = {path.with_suffix(".pdf").as_posix() for path in trees} - {"battery/fuses-pulled.pdf"}
    assert made == every | {"horn.pdf", "horn/silent.bench.pdf", "horn/silent.horn.pdf",
                            "horn/silent.short.pdf", "procedures/first-stop.pdf"}  # fmt: skip
    assert len(every) == 9  # the retired tree is not printed


def test_a_new_shop_checks_at_once_and_so_does_a_new_tree(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """From nothing to a first tree without a single finding."""
    folder = str(tmp_path / "new")
    assert main(["start", folder]) == 0
    assert main(["--shop", folder, "new", "tree", "charging/lamp-on"]) == 0
    assert main(["--shop", folder, "check", "--strict"]) == 0
    assert main(["start", folder]) == 2
    assert main(["--shop", folder, "new", "tree", "charging/lamp-on"]) == 2
    assert "already exists" in capsys.readouterr().err
    assert (tmp_path / "new/.schemas/tree.schema.json").exists()


def test_rules_are_listed_and_explained(capsys: pytest.CaptureFixture[str]) -> None:
    """`baytree rules` lists them, with a name it explains one."""
    assert main(["rules"]) == 0
    assert "reading-gap" in capsys.readouterr().out
    assert main(["rules", "reading-gap"]) == 0
    told = capsys.readouterr().out
    assert "Wrong:" in told
    assert "Right:" in told
    assert main(["rules", "nonsense"]) == 2
    assert main(["rules", "gap"]) == 2
    assert "did you mean `reading-gap`?" in capsys.readouterr().err


def test_whoever_has_read_enough_may_close_the_pipe() -> None:
    """`baytree rules | head -1` says nothing of a broken pipe."""
    command = f"{sys.executable} -m builder.commands.main --shop {SHOP} rules | head -1"
    done = subprocess.run(command, shell=True, capture_output=True, text=True, cwd=SHOP.parents[1])
    assert done.stdout.count("\n") == 1
    assert done.stderr == ""


def test_an_error_of_ours_says_so_and_exits_with_2(
    shop: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Nobody looks for a mistake in their own files that is ours."""

    def broken_check(*_: object) -> None:
        raise AssertionError("a hole in the floor")

    monkeypatch.setattr("builder.commands.check.check", broken_check)
    assert main(["--shop", str(shop), "check"]) == 2
    error = capsys.readouterr().err
    assert "bug in Baytree, not in your files" in error
    assert "a hole in the floor" in error


@pytest.mark.parametrize("command", COMMANDS, ids=lambda command: command.NAME)
def test_a_command_explains_itself(command: Command, capsys: pytest.CaptureFixture[str]) -> None:
    """Every command has help, and help for each of its words and flags."""
    with pytest.raises(SystemExit) as end:
        main([command.NAME, "--help"])
    assert end.value.code == 0
    assert command.HELP in " ".join(capsys.readouterr().out.split())
    words = argparse.ArgumentParser()
    command.add_flags(words)
    assert all(action.help for action in words._actions)
