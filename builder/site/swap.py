"""Putting a new folder in the place of an old one, whole.

In: where the site is to be. Out: a folder beside it to work in, and the new site under the old
one's name. At no moment is there a half of each: where the system can exchange two names in one
stroke (Linux and macOS) that is used; elsewhere the old folder is renamed first, and brought back
should the second rename never come.

The folder beside the site has a name that nobody else has, and a mark in it that is locked while
the build runs. A folder with the name and the mark but without a holder was left by a build that
was killed; the next build clears it up, and touches nothing else.
"""

import ctypes
import os
import shutil
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from builder.site.lock import lock

AT_FDCWD = {"linux": -100, "darwin": -2}
EXCHANGE = 2  # RENAME_EXCHANGE of Linux, RENAME_SWAP of macOS: both are 2
MARK = "left-by-a-build.txt"
WORDS = "A build of a site works in this folder. Left after a crash, the next build deletes it.\n"


@contextmanager
def folder_beside(out: Path) -> Iterator[Path]:
    """Open an empty folder on the disk of `out`; it is gone afterwards, with all that is in it."""
    out.parent.mkdir(parents=True, exist_ok=True)
    _clear_up(out)
    folder = Path(tempfile.mkdtemp(prefix=_prefix(out), dir=out.parent))
    try:
        with (folder / MARK).open("w") as mark:
            lock(mark, wait=True)
            mark.write(WORDS)
            mark.flush()
            yield folder
    finally:
        _close(folder, out)


def swap(new: Path, out: Path) -> None:
    """Put a folder of `folder_beside` in the place of `out`, and the old one beside it."""
    if not out.exists():
        new.rename(out)
    elif not _exchange(new, out):
        out.rename(_old(new.parent))
        new.rename(out)


def _prefix(out: Path) -> str:
    return f".{out.name}.baytree-"


def _old(folder: Path) -> Path:
    return folder / "old"


def _clear_up(out: Path) -> None:
    """Clear up after builds that were killed."""
    for folder in out.parent.iterdir():
        if folder.name.startswith(_prefix(out)) and _left(folder):
            _close(folder, out)


def _left(folder: Path) -> bool:
    """Whether nobody works in the folder any more; one without a mark is not ours."""
    if folder.is_symlink() or not folder.is_dir():
        return False
    try:
        with (folder / MARK).open() as mark:
            return lock(mark, wait=False)
    except FileNotFoundError:
        return not any(folder.iterdir())  # killed before it had its mark
    except PermissionError:
        return False  # somebody else's build


def _close(folder: Path, out: Path) -> None:
    """Bring the old site back if it was moved away, and delete the folder, its mark last."""
    if _old(folder).exists() and not out.exists():
        _old(folder).rename(out)
    for inside in folder.iterdir():
        if inside.name != MARK:
            shutil.rmtree(inside, ignore_errors=True)
    with suppress(OSError):  # what cannot be deleted now keeps its mark for the next build
        if all(inside.name == MARK for inside in folder.iterdir()):
            (folder / MARK).unlink(missing_ok=True)
            folder.rmdir()


def _exchange(one: Path, other: Path) -> bool:
    """Exchange two names in one stroke; False where the system or the disk cannot."""
    here = AT_FDCWD.get(sys.platform)
    call = _exchange_call()
    if here is None or call is None:
        return False
    return bool(call(here, os.fsencode(one), here, os.fsencode(other), EXCHANGE) == 0)


def _exchange_call() -> "ctypes._NamedFuncPointer | None":
    name = {"linux": "renameat2", "darwin": "renameatx_np"}.get(sys.platform, "")
    return getattr(ctypes.CDLL(None), name, None) if name else None
