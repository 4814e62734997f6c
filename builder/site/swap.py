"""Putting a new folder in the place of an old one, whole.

In: a finished folder beside the old one. Out: the new one under the old one's name. At no moment is
there a half of each: where the system can exchange two names in one stroke (Linux and macOS) that
is used; elsewhere the old folder is renamed first, and brought back should the second rename never
come.
"""

import ctypes
import os
import shutil
import sys
from pathlib import Path

AT_FDCWD = {"linux": -100, "darwin": -2}
EXCHANGE = 2  # RENAME_EXCHANGE of Linux, RENAME_SWAP of macOS: both are 2


def beside(out: Path, name: str) -> Path:
    """Return a folder beside `out`, on the same disk, that holds the new or the old site."""
    return out.with_name(f".{out.name}.{name}")


def recover(out: Path) -> None:
    """Clear up after a build that was killed: the old site is brought back if it was moved away."""
    old = beside(out, "old")
    if old.exists() and not out.exists():
        old.rename(out)
    for leftover in (old, beside(out, "new")):
        shutil.rmtree(leftover, ignore_errors=True)


def swap(out: Path) -> None:
    """Put the new folder that lies beside `out` in its place and delete what was there."""
    new, old = beside(out, "new"), beside(out, "old")
    if not out.exists():
        new.rename(out)
        return
    if _exchange(new, out):
        new.rename(old)
    else:
        out.rename(old)
        new.rename(out)
    shutil.rmtree(old, ignore_errors=True)


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
