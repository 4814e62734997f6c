"""The swap: a new folder takes the place of an old one as a whole.

In: the folder of the site. Out: a work folder next to it, and the new site under the old one's
name. The site is never half old, half new. Linux and macOS exchange two names in one step;
elsewhere the old folder is renamed first, and moved back if the second rename never happens.

The work folder has a unique name and a mark file, locked while the build runs. A folder with such a
name and an unlocked mark is left from a build that was killed; the next build deletes it, and
touches nothing else.
"""

import ctypes
import os
import shutil
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from filelock import FileLock, Timeout

_AT_FDCWD = {"linux": -100, "darwin": -2}
_EXCHANGE = 2  # RENAME_EXCHANGE of Linux, RENAME_SWAP of macOS: both are 2
MARK = "left-by-a-build.lock"  # the system frees the lock when the process ends, however it ends


@contextmanager
def folder_beside(out: Path) -> Iterator[Path]:
    """Create an empty folder on the same disk as `out`; at the end delete it with its content."""
    out.parent.mkdir(parents=True, exist_ok=True)
    _delete_leftovers(out)
    folder = Path(tempfile.mkdtemp(prefix=_prefix(out), dir=out.parent))
    try:
        with FileLock(folder / MARK):
            yield folder
    finally:
        _close(folder, out)


def swap(new: Path, out: Path) -> None:
    """Put a folder from `folder_beside` in the place of `out`, and the old one next to it."""
    if not out.exists():
        new.rename(out)
    elif not _exchange(new, out):
        out.rename(_old(new.parent))
        new.rename(out)


def _prefix(out: Path) -> str:
    return f".{out.name}.baytree-"


def _old(folder: Path) -> Path:
    return folder / "old"


def _delete_leftovers(out: Path) -> None:
    """Delete the work folders of builds that were killed."""
    for folder in out.parent.iterdir():
        if folder.name.startswith(_prefix(out)) and _is_leftover(folder):
            _close(folder, out)


def _is_leftover(folder: Path) -> bool:
    """Return whether a work folder is no longer in use; without a mark it isn't a work folder."""
    if folder.is_symlink() or not folder.is_dir():
        return False
    if not (folder / MARK).exists():
        return not any(folder.iterdir())  # killed before it made its mark
    try:
        with FileLock(folder / MARK, blocking=False):
            return True
    except (Timeout, PermissionError):
        return False  # in use, or somebody else's build


def _close(folder: Path, out: Path) -> None:
    """Move the old site back if it was moved away, and delete the folder, its mark last."""
    if _old(folder).exists() and not out.exists():
        _old(folder).rename(out)
    for inside in folder.iterdir():
        if inside.name != MARK:
            shutil.rmtree(inside, ignore_errors=True)
    with suppress(OSError):  # what can't be deleted now keeps its mark for the next build
        if all(inside.name == MARK for inside in folder.iterdir()):
            (folder / MARK).unlink(missing_ok=True)
            folder.rmdir()


def _exchange(one: Path, other: Path) -> bool:
    """Exchange two names in one step; return False where the system or the disk can't."""
    here = _AT_FDCWD.get(sys.platform)
    call = _exchange_call()
    if here is None or call is None:
        return False
    return bool(call(here, os.fsencode(one), here, os.fsencode(other), _EXCHANGE) == 0)


def _exchange_call() -> "ctypes._NamedFuncPointer | None":
    name = {"linux": "renameat2", "darwin": "renameatx_np"}.get(sys.platform, "")
    return getattr(ctypes.CDLL(None), name, None) if name else None
