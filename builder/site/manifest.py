"""The list of every file that a build wrote into a site, kept in the site itself.

In: the folder of a site. Out: its list, `baytree-files.json`; and whether the folder holds anything
that is not on it, which a build must never delete.

The list has the SHA-256 of every file and no times: the same shop gives the same bytes, and a site
that was copied or checked out has new times but the same contents. So every file is read when it is
compared; that is a small part of a build. A file that is gone is no loss, and needs no question.
"""

import hashlib
import json
import os
import stat
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import NamedTuple

NAME = "baytree-files.json"
MADE_BY_THE_SYSTEM = frozenset({".DS_Store", "Thumbs.db"})  # when somebody looks into a folder
MOST_NAMED = 3
ELSEWHERE = "or build into another folder with `--out`"


class Stamp(NamedTuple):
    """What changes when somebody writes to a file, without reading it."""

    inode: int
    mode: int
    size: int
    written: int  # nanoseconds
    changed: int  # nanoseconds; unlike `written` it cannot be set back


Seen = Mapping[str, Stamp]


def write_manifest(site: Path) -> None:
    """List every file of a finished site; the list comes last."""
    files = {name: _digest(site / name) for name in sorted(seen(site))}
    text = json.dumps({"version": 1, "files": files}, indent=1, ensure_ascii=False)
    (site / NAME).write_text(text + "\n", "utf-8", newline="\n")


def listed_files(site: Path) -> dict[str, str] | None:
    """Return the SHA-256 of every file that the build wrote, by name; None without a list."""
    try:
        files = json.loads((site / NAME).read_text("utf-8"))["files"]
    except (FileNotFoundError, ValueError, KeyError, TypeError):
        return None
    return files if isinstance(files, dict) else None


def seen(folder: Path) -> dict[str, Stamp]:
    """Stamp every file of a folder, every link, and every folder with nothing in it."""
    found: dict[str, Stamp] = {}
    for path in _entries(folder):
        if path.name not in MADE_BY_THE_SYSTEM:
            now = path.lstat()
            found[path.relative_to(folder).as_posix()] = Stamp(
                now.st_ino, now.st_mode, now.st_size, now.st_mtime_ns, now.st_ctime_ns
            )
    return found


def only_ours(out: Path) -> Seen:
    """Return what is in a folder of which nobody but a build has written a file.

    Raises FileExistsError where it holds anything else, and names it.
    """
    if out.exists() and not out.is_dir():
        raise FileExistsError(f"{out} is not a folder: give a folder for the site with `--out`")
    there = seen(out) if out.exists() else {}
    files = listed_files(out)
    if there and files is None:
        raise FileExistsError(_unlisted(out))
    files = files or {}
    strange = [name for name in there if name != NAME and not _known(name, files)]
    if strange:
        raise FileExistsError(_strange(out, strange))
    edited = [name for name in there if name in files and not _as_built(out / name, files[name])]
    if edited:
        raise FileExistsError(_edited(out, edited))
    return there


def _entries(folder: Path) -> Iterator[Path]:
    def refuse(error: OSError) -> None:
        raise error

    for place, folders, files in os.walk(folder, onerror=refuse):
        here = Path(place)
        yield from (here / name for name in files)
        yield from (here / name for name in folders if (here / name).is_symlink())
        if not folders and not files and here != folder:
            yield here


def _known(name: str, files: Iterable[str]) -> bool:
    """Whether it is on the list, or a folder of ours from which every file is gone."""
    return name in files or any(one.startswith(f"{name}/") for one in files)


def _as_built(file: Path, digest: str) -> bool:
    return stat.S_ISREG(file.lstat().st_mode) and _digest(file) == digest


def _digest(file: Path) -> str:
    with file.open("rb") as opened:
        return hashlib.file_digest(opened, "sha256").hexdigest()


def _unlisted(out: Path) -> str:
    return (
        f"{out} has files in it and no `{NAME}`: it is no site of ours, or one of an older version."
        f" A build replaces the whole folder, so nothing was built.\n  hint: if you need nothing"
        f" in it, delete the folder, {ELSEWHERE}"
    )


def _strange(out: Path, names: Iterable[str]) -> str:
    return (
        f"{out} holds what no build wrote: {_named(names)}. A build replaces the whole folder, so"
        f" nothing was built.\n  hint: move it out of the folder, {ELSEWHERE}; what a host wants"
        " to find in the site is best copied in when the site is sent there"
    )


def _edited(out: Path, names: Iterable[str]) -> str:
    return (
        f"{out} was changed by hand after it was built: {_named(names)}. A build would write over"
        " it, so nothing was built.\n  hint: make the change in the shop's own files; then delete"
        f" the changed file here, {ELSEWHERE}"
    )


def _named(names: Iterable[str]) -> str:
    first, *rest = sorted(names)
    shown = ", ".join(f"`{name}`" for name in (first, *rest[: MOST_NAMED - 1]))
    more = len(rest) + 1 - MOST_NAMED
    return f"{shown} and {more} more" if more > 0 else shown
