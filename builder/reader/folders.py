"""The files in a shop's folders, and what can't be read there.

In: a shop and one of its folders. Out: the files in it, and a finding for everything else: a folder
that can't be opened, a broken link, a pipe, a name that isn't text. Nothing is dropped silently.
"""

import os
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from builder.model.finding import Finding
from builder.reader.source import mistake

LEFT_BY_TOOLS = (".#", "._")  # left beside a file by editors and systems, not by an author
UNREAD = "what is in it drops out of every check, page, and search"


@dataclass(frozen=True, slots=True)
class Listing:
    """The contents of a folder and of the folders below; names are relative to the shop."""

    files: tuple[str, ...]
    folders: tuple[str, ...]
    findings: tuple[Finding, ...]


def listing(shop: Path, folder: str) -> Listing:
    """List a folder and all below it without following links; a missing folder is empty."""
    files: list[str] = []
    folders: list[str] = []
    findings: list[Finding] = []
    unlisted = [folder]
    while unlisted:
        parent = unlisted.pop()
        for entry in _entries(shop, parent):
            if isinstance(entry, Finding):
                findings.append(entry)
                continue
            name = f"{parent}/{entry.name}"
            if _is_folder(entry):
                folders.append(name)
                unlisted.append(name)
            elif finding := _not_a_file(entry, name):
                findings.append(finding)
            else:
                files.append(name)
    return Listing(
        tuple(sorted(files, key=_by_folder)),
        tuple(sorted(folders, key=_by_folder)),
        tuple(sorted(findings, key=lambda finding: finding.at.file)),
    )


def _by_folder(name: str) -> list[str]:
    return name.split("/")


def _entries(shop: Path, folder: str) -> Iterator[os.DirEntry[str] | Finding]:
    """Yield the entries of one folder, or findings: for a bad name, or for the folder itself."""
    try:
        with os.scandir(shop / folder) as entries:
            for entry in entries:
                if entry.name.isprintable():
                    yield entry
                elif not entry.name.startswith(LEFT_BY_TOOLS):
                    yield _bad_name(folder, entry.name)
    except FileNotFoundError:
        return
    except NotADirectoryError:
        yield not_a_folder(folder)
    except OSError as error:
        yield mistake("unreadable", folder, f"the folder can't be opened: {error.strerror}",
                      UNREAD, "give yourself read permission: `chmod u+rx` on it")  # fmt: skip


def not_a_folder(name: str) -> Finding:
    """Return the finding for a file where a folder belongs."""
    return mistake("unreadable", name, f"`{name}` must be a folder, but it's a file",
                   UNREAD, "rename the file, then create the folder")  # fmt: skip


def _is_folder(entry: os.DirEntry[str]) -> bool:
    try:
        return entry.is_dir(follow_symlinks=False)
    except OSError:
        return False


def _not_a_file(entry: os.DirEntry[str], name: str) -> Finding | None:
    """Return the finding for an entry that isn't a readable file; None for a file."""
    if entry.name.startswith(LEFT_BY_TOOLS):
        return None
    try:
        if entry.is_file():
            return None
        linked = entry.is_symlink()
    except OSError:
        linked = True  # a link to itself
    if linked:
        return mistake("link", name, "this link is broken, or it leads to itself or to a folder",
                       "the techs who look for its contents find nothing",
                       "put the file or the folder itself here, or delete the link")  # fmt: skip
    return mistake("unreadable", name, "this is a pipe, a socket, or a device, not a file",
                   "reading it would never end", "delete it, or put a file here")  # fmt: skip


def _bad_name(folder: str, name: str) -> Finding:
    """Return the finding for a name that isn't UTF-8 or has an invisible character in it."""
    shown = os.fsencode(name).decode("utf-8", "backslashreplace")
    shown = "".join(c if c.isprintable() else f"\\u{ord(c):04x}" for c in shown)
    return mistake("file-name", f"{folder}/{shown}", f"the file name `{shown}` can't be displayed",
                   "no branch, link, or search could name the file",
                   "rename it with lowercase letters, digits, and `-`")  # fmt: skip
