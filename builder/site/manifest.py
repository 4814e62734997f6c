"""The manifest: the list of every file that a build wrote into a site, kept in the site itself.

In: the folder of a site. Out: its manifest, `baytree-files.json`; an error where the folder holds
something else, which a build must never delete.

The manifest has the SHA-256 of every file and no times: the same shop gives the same bytes, and a
site that was copied or checked out has new times but the same contents. Every file is read to
compare it, which is a small part of a build. A missing file is no loss, so it's no error.
"""

import hashlib
import json
import os
import stat
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import NamedTuple

MANIFEST = "baytree-files.json"
_FILE_MANAGER_FILES = frozenset({".DS_Store", "Thumbs.db"})  # written when a folder is opened
_MOST_NAMED = 3
_ELSEWHERE = "or build into another folder with `--out`"


class FileStamp(NamedTuple):
    """What changes when somebody writes to a file; read without opening it."""

    inode: int
    mode: int
    size: int
    written: int  # nanoseconds
    changed: int  # nanoseconds; `written` can be set back, this can't


FolderState = Mapping[str, FileStamp]


def write_manifest(site: Path, known: Mapping[str, str] | None = None) -> None:
    """Write the manifest of a finished site, after its other files.

    `known` is the SHA-256 of files that were in memory when they were written; only the others are
    read.
    """
    files = digests_of(site, known or {})
    text = json.dumps({"version": 1, "files": files}, indent=1, ensure_ascii=False)
    (site / MANIFEST).write_text(text + "\n", "utf-8", newline="\n")


def digests_of(site: Path, known: Mapping[str, str]) -> dict[str, str]:
    """Return the SHA-256 of every file; those that are known aren't read again."""
    return {name: known.get(name) or _digest(site / name) for name in sorted(_names(site))}


def listed_files(site: Path) -> dict[str, str] | None:
    """Return the SHA-256 of every file in the manifest, by name; None without a manifest."""
    try:
        files = json.loads((site / MANIFEST).read_text("utf-8"))["files"]
    except (FileNotFoundError, ValueError, KeyError, TypeError):
        return None
    return files if isinstance(files, dict) else None


def folder_state(folder: Path) -> dict[str, FileStamp]:
    """Return the stamps of every file, link and empty folder in a folder."""
    stamps: dict[str, FileStamp] = {}
    for name in _names(folder):
        status = (folder / name).lstat()
        stamps[name] = FileStamp(
            status.st_ino,
            status.st_mode,
            status.st_size,
            status.st_mtime_ns,
            status.st_ctime_ns,
        )
    return stamps


def _digest(file: Path) -> str:
    """Return the SHA-256 of a file, as hexadecimal digits."""
    with file.open("rb") as opened:
        return hashlib.file_digest(opened, "sha256").hexdigest()


def checked_folder(out: Path) -> FolderState:
    """Return the state of a folder that a build may replace: every file in it is a build's.

    Raises FileExistsError where it holds anything else, and names it.
    """
    if out.exists() and not out.is_dir():
        raise FileExistsError(f"{out} is not a folder: give a folder for the site with `--out`")
    state = folder_state(out) if out.exists() else {}
    files = listed_files(out)
    if state and files is None:
        raise FileExistsError(_without_manifest(out))
    files = files or {}
    foreign = [name for name in state if name != MANIFEST and not _is_listed(name, files)]
    if foreign:
        raise FileExistsError(_foreign(out, foreign))
    edited = [name for name in state if name in files and not _is_as_built(out / name, files[name])]
    if edited:
        raise FileExistsError(_edited(out, edited))
    return state


def _names(folder: Path) -> Iterator[str]:
    """Yield the name of every file, link and empty folder in a folder, in no order."""

    def refuse(error: OSError) -> None:
        raise error

    for place, folders, files in os.walk(folder, onerror=refuse):
        here = Path(place)
        inside = f"{here.relative_to(folder).as_posix()}/" if here != folder else ""
        yield from (inside + name for name in files if name not in _FILE_MANAGER_FILES)
        yield from (inside + name for name in folders if (here / name).is_symlink())
        if inside and not folders and not files:
            yield inside.removesuffix("/")


def _is_listed(name: str, files: Iterable[str]) -> bool:
    """Return whether it's in the manifest, or a folder whose listed files are all gone."""
    return name in files or any(file.startswith(f"{name}/") for file in files)


def _is_as_built(file: Path, digest: str) -> bool:
    return stat.S_ISREG(file.lstat().st_mode) and _digest(file) == digest


def _without_manifest(out: Path) -> str:
    return (
        f"{out} holds files but no `{MANIFEST}`, so no build made it, or an old version did."
        f" A build replaces the whole folder, so nothing was built.\n  hint: if you don't need"
        f" anything in it, delete the folder, {_ELSEWHERE}"
    )


def _foreign(out: Path, names: Iterable[str]) -> str:
    return (
        f"{out} holds something that no build wrote: {_named(names)}. A build replaces the whole"
        f" folder, so nothing was built.\n  hint: move it out of the folder, {_ELSEWHERE}; copy"
        " files that your web host needs into the site when you upload it"
    )


def _edited(out: Path, names: Iterable[str]) -> str:
    return (
        f"{out} was changed by hand after it was built: {_named(names)}. A build would overwrite"
        " that, so nothing was built.\n  hint: make the change in the shop's own files; then delete"
        f" the changed file here, {_ELSEWHERE}"
    )


def _named(names: Iterable[str]) -> str:
    first, *rest = sorted(names)
    shown = ", ".join(f"`{name}`" for name in (first, *rest[: _MOST_NAMED - 1]))
    more = len(rest) + 1 - _MOST_NAMED
    return f"{shown} and {more} more" if more > 0 else shown
