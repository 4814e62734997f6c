"""No file drops out of a shop silently: it is read, or a finding says why not."""

import os
import shutil
import socket
import subprocess
import sys
import tempfile
from pathlib import Path

import pytest

import builder
from builder.commands.main import main

from .conftest import SHOP, Reports

REPO = Path(builder.__file__).parents[1]  # where subprocesses find our code
# Reads a sound shop first: all modules are loaded before root gives up its rights, which would not
# be held to those of files. 65534 is the user without rights, by custom of Unix systems.
AS_NOBODY = """
import os, sys
from pathlib import Path
from builder.cache.digest import file_digest, files_in
from builder.check.examine import content_of
from builder.check.unchecked_library import read_library
read_library(Path(sys.argv[1]))
if os.geteuid() == 0:
    os.setgroups([]), os.setgid(65534), os.setuid(65534)
shop = Path(sys.argv[2])
for one in read_library(shop)[1]:
    print(one.rule, one.at.file)
[file_digest(file) for file in files_in(shop)], content_of(shop / "trees/horn/silent.yml")
"""


def test_the_sound_shop_has_nothing_misplaced(reports: Reports) -> None:
    """What the tests below find is of their own making."""
    assert reports() == set()


def test_notes_and_marks_of_tools_are_left_alone(shop: Path, reports: Reports) -> None:
    """A note beside the records, a table for drafting and the lock of an editor are no mistakes."""
    (shop / "kb/README.md").write_text("notes")
    (shop / "kb/modules").mkdir(exist_ok=True)
    (shop / "kb/modules/README.md").write_text("notes")
    (shop / "trees/.gitkeep").write_text("")
    (shop / "trees/horn/README.md").write_text("notes")
    (shop / "trees/horn/silent.table.yml").write_text("rows: []")
    (shop / "trees/horn/.#silent.yml").symlink_to("someone@machine.4711")
    (shop / "trees/horn/._silent.yml").write_bytes(bytes(10))
    assert reports() == set()


def test_a_shop_without_the_folder_of_trees_is_reported(shop: Path, reports: Reports) -> None:
    """The wrong folder, or a folder renamed, is no sound shop of no trees."""
    shutil.rmtree(shop / "trees")
    assert ("unreadable", "trees") in reports()


def test_an_empty_folder_of_trees_is_sound(shop: Path, reports: Reports) -> None:
    """A new shop has no tree yet."""
    shutil.rmtree(shop / "trees")
    (shop / "trees").mkdir(exist_ok=True)
    assert reports() == set()


@pytest.mark.parametrize("folder", ["trees", "kb/modules", "kb/how-to/pictures", "site_config"])
def test_a_file_where_a_folder_is_read_is_reported(
    shop: Path, reports: Reports, folder: str
) -> None:
    """A file of the folder's name would make the folder look empty."""
    shutil.rmtree(shop / folder, ignore_errors=True)
    (shop / folder).write_text("")
    assert ("unreadable", folder) in reports()


@pytest.mark.parametrize("file", ["kb/tools.yml", "trees/horn/silent.yml", "kb/modules/a.yml"])
def test_a_folder_where_a_file_is_read_is_reported(shop: Path, reports: Reports, file: str) -> None:
    """A folder of the file's name would make the file look as if it were never written."""
    remove(shop / file)
    (shop / file).mkdir(parents=True)
    assert ("unreadable", file) in reports()


MISNAMED = (
    "kb/tools.yaml", "kb/tool.yml", "kb/Tools.yml", "kb/modules/x.yaml", "kb/modules/old/x.yml",
    "kb/cases/x.YML", "kb/vehicles/x.yaml", "kb/how-to/x.markdown", "kb/how-to/X.MD",
    "kb/how-to/old/x.md", "kb/how-to/README.md", "kb/how-to/index.md", "kb/how-to/x.yml",
    "kb/how-to/.md", "trees/horn/.yml", "trees/horn/.loud.yml", "trees/horn/loud.YML",
    "trees/horn/loud.yml.txt", "trees/.old/loud.yml", "trees/horn/README.yml", "trees/loud.Yaml",
    "site_config/shop.yaml", "kb/how-to/pictures/old/plug.svg", "kb/.yml",
)  # fmt: skip


@pytest.mark.parametrize("file", MISNAMED)
def test_a_file_that_only_looks_as_if_it_were_read_is_reported(
    shop: Path, reports: Reports, file: str
) -> None:
    """A wrong ending, a wrong folder, or a leading dot is reported with the right name."""
    (shop / file).parent.mkdir(parents=True, exist_ok=True)
    (shop / file).write_text("x: y\n")
    assert reports() == {("file-name", file)}


@pytest.mark.parametrize(
    ("one", "other"),
    [("trees/horn/silent.yml", "trees/horn/silent.yaml"),
     ("trees/horn/silent.yml", "trees/horn/Silent.yml"),
     ("kb/how-to/supply-at-the-plug.md", "kb/how-to/supply at the plug.md")],
)  # fmt: skip
def test_two_files_of_one_page_are_reported(
    shop: Path, reports: Reports, one: str, other: str
) -> None:
    """Of two files with one id only one would be shown."""
    shutil.copyfile(shop / one, shop / other)
    assert {file for rule, file in reports() if rule == "file-name"} <= {one, other}
    assert ("file-name", max(one, other)) in reports()


@pytest.mark.parametrize(
    "file", ["trees/aux/silent.yml", "trees/horn/con.yml", "kb/modules/NUL.yml"]
)
def test_a_name_that_windows_keeps_is_reported(shop: Path, reports: Reports, file: str) -> None:
    """A shop is opened on any PC, so nothing in it is named after a device."""
    (shop / file).parent.mkdir(parents=True, exist_ok=True)
    (shop / file).write_text("x: y\n")
    assert ("file-name", file) in reports()


def test_two_cases_of_one_number_are_reported(shop: Path, reports: Reports) -> None:
    """Of two closed jobs with one number only one would count."""
    (shop / "kb/cases").mkdir(exist_ok=True)
    for name in "ab":
        (shop / f"kb/cases/{name}.yml").write_text("case: 2026-0001\n")
    assert ("duplicate-key", "kb/cases/b.yml") in reports()


@pytest.mark.parametrize("folder", ["trees/horn", "kb", "kb/how-to/pictures", "site_config"])
def test_what_is_no_file_at_all_is_reported(shop: Path, reports: Reports, folder: str) -> None:
    """A pipe or a socket among the files is reported, and nothing hangs."""
    (shop / folder).mkdir(exist_ok=True)
    os.mkfifo(shop / folder / "pipe.yml")
    with socket.socket(socket.AF_UNIX) as endpoint, pytest.MonkeyPatch.context() as patch:
        patch.chdir(shop / folder)  # the address of a socket is up to a hundred characters
        endpoint.bind("socket.yml")
    assert reports() == {("unreadable", f"{folder}/{name}.yml") for name in ("pipe", "socket")}


LINKED = ("trees/horn/loop.yml", "kb/tools.yml", "site_config/shop.yml", "kb/how-to/loop.md",
          "kb/how-to/pictures/loop.svg", "trees/loop", "kb/modules")  # fmt: skip


def remove(path: Path) -> None:
    """Remove a file or a folder, if it is there."""
    if path.is_dir():
        shutil.rmtree(path)
    path.unlink(missing_ok=True)


@pytest.mark.parametrize("file", LINKED)
def test_a_link_to_itself_is_reported(shop: Path, reports: Reports, file: str) -> None:
    """A loop of links is a finding, wherever it is."""
    remove(shop / file)
    (shop / file).parent.mkdir(exist_ok=True)
    (shop / file).symlink_to((shop / file).name)
    assert ("link", file) in reports()


@pytest.mark.parametrize("file", LINKED)
def test_a_check_of_a_loop_of_links_ends_with_findings(
    shop: Path, file: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """The command prints the finding, though there is no line to show."""
    remove(shop / file)
    (shop / file).parent.mkdir(exist_ok=True)
    (shop / file).symlink_to((shop / file).name)
    assert main(["--shop", str(shop), "check"]) == 1
    assert f"{file}:1:1: error: this link is broken" in capsys.readouterr().out


@pytest.mark.parametrize("folder", ["trees", "trees/horn"])
def test_a_name_that_is_not_text_is_reported(shop: Path, reports: Reports, folder: str) -> None:
    """A name that isn't UTF-8, or has a line end in it, can't be named in a branch."""
    for name in (b"l\xfcfter.yml", b"a\nb.yml"):
        path = os.fsencode(shop / folder) + b"/" + name
        Path(os.fsdecode(path)).write_text("x: y\n")
    names = {f"{folder}/l\\xfcfter.yml", f"{folder}/a\\u000ab.yml"}
    assert reports() == {("file-name", name) for name in names}


def test_a_folder_behind_a_link_is_reported(shop: Path, reports: Reports) -> None:
    """Trees behind a link to a folder aren't read, and that is reported."""
    (shop / "trees/horn").rename(shop.parent / "elsewhere")
    (shop / "trees/horn").symlink_to(shop.parent / "elsewhere")
    assert ("link", "trees/horn") in reports()


@pytest.mark.parametrize(
    "name", ["trees/horn", "trees/horn/silent.yml", "kb", "kb/tools.yml", "site_config",
             "kb/how-to/supply-at-the-plug.md", "kb/how-to/pictures/plug.svg"],
)  # fmt: skip
def test_what_the_user_may_not_read_is_reported(name: str) -> None:
    """Without the right to a file or folder it is named, and never passed over."""
    with tempfile.TemporaryDirectory() as folder:  # pytest's own is open to its user alone
        shop = Path(shutil.copytree(SHOP, Path(folder) / "shop"))
        (shop / "kb/how-to/pictures").mkdir(exist_ok=True)
        (shop / "kb/how-to/pictures/plug.svg").write_text("")
        for place in (*shop.rglob("*"), shop, shop.parent):
            place.chmod(0o755)
        (shop / name).chmod(0)
        run = subprocess.run(
            [sys.executable, "-c", AS_NOBODY, str(SHOP), str(shop)],
            cwd=REPO, capture_output=True, text=True, timeout=60, check=False,
        )  # fmt: skip
        (shop / name).chmod(0o755)
    assert f"unreadable {name}\n" in run.stdout, run.stdout + run.stderr
    assert run.stderr == ""
