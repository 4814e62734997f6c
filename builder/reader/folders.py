"""What lies in the folders of a shop, and what stands in the way of reading it.

In: a shop and one of its folders. Out: the files in it that can be read as far as their place goes,
and a finding for everything else: a folder that does not open, a link that leads nowhere, a pipe,
a name that is not text. Nothing drops out of a shop in silence.
"""

import os
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from builder.model.finding import Finding
from builder.reader.source import mistake

LEFT_BY_TOOLS = (".#", "._")  # marks of editors and systems beside a file; no author wrote them
UNREAD = "what lies here drops out of every check, page and search"


@dataclass(frozen=True, slots=True)
class Listing:
    """What one folder of a shop and the folders below it hold; names are relative to the shop."""

    files: tuple[str, ...]
    folders: tuple[str, ...]
    findings: tuple[Finding, ...]


def listing(shop: Path, folder: str) -> Listing:
    """List a folder to its bottom, links to folders not followed; a missing folder is empty."""
    files: list[str] = []
    folders: list[str] = []
    findings: list[Finding] = []
    waiting = [folder]
    while waiting:
        inside = waiting.pop()
        for found in _entries(shop, inside):
            if isinstance(found, Finding):
                findings.append(found)
                continue
            name = f"{inside}/{found.name}"
            if _is_folder(found):
                folders.append(name)
                waiting.append(name)
            elif told := _told(found, name):
                findings.append(told)
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
    """Yield what lies in one folder; a finding for a name that is not text, or for the folder."""
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
        yield no_folder(folder)
    except OSError as error:
        yield mistake("unreadable", folder, f"the folder does not open: {error.strerror}",
                      UNREAD, "give yourself the right to read it: `chmod u+rx` on it")  # fmt: skip


def no_folder(name: str) -> Finding:
    """Make the finding for a file that stands where a folder is read."""
    return mistake("unreadable", name, f"the folder `{name}` is a file",
                   UNREAD, "rename the file, and make a folder of that name")  # fmt: skip


def _is_folder(entry: os.DirEntry[str]) -> bool:
    try:
        return entry.is_dir(follow_symlinks=False)
    except OSError:
        return False


def _told(entry: os.DirEntry[str], name: str) -> Finding | None:
    """Return what keeps an entry from being a file to read, or None."""
    if entry.name.startswith(LEFT_BY_TOOLS):
        return None
    try:
        if entry.is_file():
            return None
        linked = entry.is_symlink()
    except OSError:
        linked = True  # a link to itself
    if linked:
        return mistake("link", name, "this is a link to nothing, to itself or to a folder",
                       "what it was to hold is missing for anyone who looks for it",
                       "put the file or the folder itself here, or delete the link")  # fmt: skip
    return mistake("unreadable", name, "this is a pipe, a socket or a device, and not a file",
                   "reading it would never end", "delete it, or put a file here")  # fmt: skip


def _bad_name(folder: str, name: str) -> Finding:
    """Tell of a name that cannot be shown: not UTF-8, or with a sign in it that cannot be seen."""
    shown = os.fsencode(name).decode("utf-8", "backslashreplace")
    shown = "".join(c if c.isprintable() else f"\\u{ord(c):04x}" for c in shown)
    return mistake("file-name", f"{folder}/{shown}", f"the name `{shown}` cannot be written out",
                   "nobody could name the file in a branch, a link or a search",
                   "rename it in small letters, digits and `-`")  # fmt: skip
