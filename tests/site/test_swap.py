"""The folder beside a site in which a build works: its own name, and no leftovers."""

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
    """Return what the one file says."""
    return (folder / "page").read_text("utf-8")


@pytest.fixture(params=["one stroke", "two renames"])
def out(request: pytest.FixtureRequest, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Return the place of a site, where the system can exchange names and where it cannot."""
    if request.param == "two renames":
        monkeypatch.setattr(swapping, "_exchange", lambda *_: False)
    return tmp_path / "site"


@pytest.mark.parametrize("before", ["absent", "old"])
def test_the_new_folder_takes_the_place(out: Path, before: str) -> None:
    """Whatever stood there, afterwards it is the new one, and nothing lies beside it."""
    if before == "old":
        put(out, "old")
    with folder_beside(out) as folder:
        swap(put(folder / "new", "new"), out)
        assert read(out) == "new"
    assert read(out) == "new"
    assert [path.name for path in out.parent.iterdir()] == ["site"]


def test_the_folder_is_gone_after_an_error(out: Path) -> None:
    """A build that fails leaves nothing beside the old site."""
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
    """A `.site.old` or a look-alike without our mark is not ours to delete."""
    names = [".site.old", ".site.new", ".site.baytree-mine", "site.baytree-mine"]
    for name in names:
        put(out.parent / name, name)
    with folder_beside(out) as folder:
        swap(put(folder / "new", "new"), out)
    assert [read(out.parent / name) for name in names] == names


def test_a_link_is_not_followed(out: Path, tmp_path: Path) -> None:
    """A link with a name like ours leads to somebody's folder, which stays."""
    kept = put(tmp_path / "kept", "kept")
    (kept / MARK).touch()
    (tmp_path / ".site.baytree-link").symlink_to(kept)
    with folder_beside(out):
        pass
    assert read(kept) == "kept"


def test_what_a_killed_build_left_is_cleared_up(out: Path) -> None:
    """With the mark and without a holder it is a leftover; so is an empty one."""
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
    """Killed between two renames: the old site stands again before anything else is done."""
    left = out.with_name(".site.baytree-a")
    left.mkdir()
    (left / MARK).touch()
    put(left / "old", "old")
    with folder_beside(out):
        assert read(out) == "old"


def test_the_folder_of_a_running_build_stays(out: Path) -> None:
    """A second build of the same place does not pull the ground from under the first."""
    with folder_beside(out) as first:
        with folder_beside(out) as second:
            assert first != second
        assert (first / MARK).is_file()
