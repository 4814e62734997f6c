"""A build deletes no file that it didn't write: the manifest in the site lists its files."""

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from builder.site.manifest import (
    MANIFEST,
    checked_folder,
    folder_state,
    listed_files,
    write_manifest,
)

from .conftest import build_shop


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """Return a small folder as a build leaves it."""
    (tmp_path / "site" / "assets").mkdir(parents=True)
    (tmp_path / "site" / "index.html").write_text("home", "utf-8")
    (tmp_path / "site" / "assets" / "site.css").write_text("p {}", "utf-8")
    write_manifest(tmp_path / "site")
    return tmp_path / "site"


def _file(name: str) -> Callable[[Path], None]:
    def put(site: Path) -> None:
        (site / name).parent.mkdir(parents=True, exist_ok=True)
        (site / name).write_text("mine", "utf-8")

    return put


def _link(site: Path) -> None:
    (site / "index.html").unlink()
    (site.parent / "home.html").write_text("home", "utf-8")
    (site / "index.html").symlink_to(site.parent / "home.html")


def _same_size_and_time(site: Path) -> None:
    file = site / "index.html"
    before = file.stat()
    file.write_text("mine", "utf-8")
    os.utime(file, ns=(before.st_atime_ns, before.st_mtime_ns))


FOREIGN = {
    "CNAME": _file("CNAME"),
    ".nojekyll": _file(".nojekyll"),
    ".git/HEAD": _file(".git/HEAD"),
    "notes/today.txt": _file("notes/today.txt"),
    "assets/own.css": _file("assets/own.css"),
    "empty": lambda site: (site / "empty").mkdir(),
    "photos": lambda site: (site / "photos").symlink_to(site.parent),
}
EDITED = {
    "written to": _file("index.html"),
    "same size, time set back": _same_size_and_time,
    "a link in its place": _link,
}


def test_a_folder_as_it_was_built_may_be_replaced(site: Path) -> None:
    """Unchanged listed files may be replaced, and so may a missing or an empty folder."""
    assert set(checked_folder(site)) == {"index.html", "assets/site.css", MANIFEST}
    assert checked_folder(site.parent / "absent") == {}
    (site.parent / "empty").mkdir()
    assert checked_folder(site.parent / "empty") == {}


def test_a_copy_with_new_times_may_be_replaced(site: Path) -> None:
    """Contents count, not times: a copy or a checkout of a site is still a build's."""
    for name in folder_state(site):
        os.utime(site / name, (1, 1))
    checked_folder(site)


def test_a_missing_file_is_no_error(site: Path) -> None:
    """A missing file is no loss, and neither is its empty folder."""
    (site / "assets" / "site.css").unlink()
    checked_folder(site)


@pytest.mark.parametrize("name", [".DS_Store", "assets/Thumbs.db"])
def test_files_of_a_file_manager_are_no_error(site: Path, name: str) -> None:
    """A user who looked into the folder with a file manager can still build."""
    _file(name)(site)
    checked_folder(site)


@pytest.mark.parametrize("name", FOREIGN)
def test_anything_that_no_build_wrote_is_named(site: Path, name: str) -> None:
    """A foreign file, link or empty folder keeps the folder from being replaced."""
    FOREIGN[name](site)
    with pytest.raises(FileExistsError, match=f"no build wrote: `{name}`"):
        checked_folder(site)


@pytest.mark.parametrize("how", EDITED)
def test_a_file_changed_by_hand_is_named(site: Path, how: str) -> None:
    """An edit is never overwritten, whatever its date and size."""
    EDITED[how](site)
    with pytest.raises(FileExistsError, match=r"changed by hand .*: `index\.html`"):
        checked_folder(site)


def test_a_site_without_a_manifest_is_refused(site: Path) -> None:
    """Even one with the same files: the message says to move or delete it."""
    (site / MANIFEST).unlink()
    with pytest.raises(FileExistsError, match="delete the folder, or build into another folder"):
        checked_folder(site)


@pytest.mark.parametrize("text", ["", "[]", '{"files": ["index.html"]}', "\0"])
def test_an_unreadable_manifest_lists_nothing(site: Path, text: str) -> None:
    """A broken manifest counts as none, without a traceback."""
    (site / MANIFEST).write_text(text, "utf-8")
    assert listed_files(site) is None
    with pytest.raises(FileExistsError, match=MANIFEST):
        checked_folder(site)


def test_many_foreign_files_are_counted(site: Path) -> None:
    """The message stays short."""
    for name in "abcde":
        _file(name)(site)
    with pytest.raises(FileExistsError, match="`a`, `b`, `c` and 2 more"):
        checked_folder(site)


def test_a_file_is_not_a_folder(site: Path) -> None:
    """A file in the place of the folder is named, and stays."""
    with pytest.raises(FileExistsError, match="is not a folder"):
        checked_folder(site / "index.html")


def test_a_build_lists_every_file_that_it_wrote(shop: Path, tmp_path: Path) -> None:
    """The manifest is complete: the next build knows every file of the site."""
    out = tmp_path / "site"
    build_shop(shop, out)
    assert set(listed_files(out) or ()) == set(folder_state(out)) - {MANIFEST}
    assert "trees/horn/silent.html" in (listed_files(out) or ())


def test_a_file_added_during_a_build_stays(
    shop: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The folder is checked again just before it is replaced."""
    out = tmp_path / "site"
    build_shop(shop, out)
    last_step = "builder.site.build_site.write_pages"
    monkeypatch.setattr(last_step, lambda *_: _file("CNAME")(out) or {})
    with pytest.raises(FileExistsError, match="`CNAME`"):
        build_shop(shop, out)
    assert (out / "CNAME").read_text("utf-8") == "mine"
    assert not list(tmp_path.glob(".site.*"))


def test_a_site_with_trees_is_not_replaced_by_an_empty_one(shop: Path, tmp_path: Path) -> None:
    """Without its trees a shop leaves the site unchanged; without a site it builds."""
    out = tmp_path / "site"
    build_shop(shop, out)
    (shop / "trees").rename(tmp_path / "trees")
    with pytest.raises(FileExistsError, match="this shop has no trees"):
        build_shop(shop, out)
    assert (out / "trees" / "horn" / "silent.html").is_file()
    build_shop(shop, tmp_path / "other")
    build_shop(shop, tmp_path / "other")
    assert (tmp_path / "other" / "index.html").is_file()
