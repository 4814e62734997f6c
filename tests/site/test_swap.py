"""The swap: one step for users, a unique work folder, and no leftovers."""

from pathlib import Path

import pytest

from builder.site import swap as swapping
from builder.site.swap import MARK, folder_beside, swap


def put(folder: Path, text: str) -> Path:
    """Write a folder with one file."""
    folder.mkdir()
    (folder / "page").write_text(text, "utf-8")
    return folder


def read(folder: Path) -> str:
    """Return the content of the one file."""
    return (folder / "page").read_text("utf-8")


@pytest.fixture(params=["one step", "two renames"])
def out(request: pytest.FixtureRequest, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Return the place of a site, with and without a system call that exchanges names."""
    if request.param == "two renames":
        monkeypatch.setattr(swapping, "_exchange", lambda *_: False)
    return tmp_path / "site"


@pytest.mark.parametrize("before", ["absent", "old"])
def test_the_new_folder_takes_the_place(out: Path, before: str) -> None:
    """Afterwards the new one is there, and nothing is next to it."""
    if before == "old":
        put(out, "old")
    with folder_beside(out) as folder:
        swap(put(folder / "new", "new"), out)
        assert read(out) == "new"
    assert read(out) == "new"
    assert [path.name for path in out.parent.iterdir()] == ["site"]


def test_the_work_folder_is_gone_after_an_error(out: Path) -> None:
    """A build that fails leaves nothing next to the old site."""
    put(out, "old")

    def fail() -> None:
        with folder_beside(out) as folder:
            put(folder / "new", "new")
            raise ZeroDivisionError

    with pytest.raises(ZeroDivisionError):
        fail()
    assert [path.name for path in out.parent.iterdir()] == ["site"]
    assert read(out) == "old"


def test_folders_of_the_user_stay(out: Path) -> None:
    """Similar names without the mark file are never deleted."""
    names = [".site.old", ".site.new", ".site.baytree-mine", "site.baytree-mine"]
    for name in names:
        put(out.parent / name, name)
    with folder_beside(out) as folder:
        swap(put(folder / "new", "new"), out)
    assert [read(out.parent / name) for name in names] == names


def test_a_link_is_not_followed(out: Path, tmp_path: Path) -> None:
    """A link with the name of a work folder is never deleted through."""
    theirs = put(tmp_path / "theirs", "theirs")
    (theirs / MARK).touch()
    (tmp_path / ".site.baytree-link").symlink_to(theirs)
    with folder_beside(out):
        pass
    assert read(theirs) == "theirs"


def test_leftovers_of_a_killed_build_are_deleted(out: Path) -> None:
    """A folder with an unlocked mark is a leftover, and so is an empty one."""
    put(out, "old")
    left = out.with_name(".site.baytree-a")
    left.mkdir()
    (left / MARK).touch()
    put(left / "new", "half")
    out.with_name(".site.baytree-b").mkdir()
    with folder_beside(out):
        pass
    assert [path.name for path in out.parent.iterdir()] == ["site"]
    assert read(out) == "old"


def test_an_old_site_that_was_moved_away_comes_back(out: Path) -> None:
    """After a kill between the two renames the next build first restores the old site."""
    left = out.with_name(".site.baytree-a")
    left.mkdir()
    (left / MARK).touch()
    put(left / "old", "old")
    with folder_beside(out):
        assert read(out) == "old"


def test_the_folder_of_a_running_build_stays(out: Path) -> None:
    """A second build of the same site doesn't delete the first one's folder."""
    with folder_beside(out) as first:
        with folder_beside(out) as second:
            assert first != second
        assert (first / MARK).is_file()
