"""What the last build left in the work folder, and whether all of it is still as it was.

In: a work folder. Out: the pages that can be kept; none where a file was damaged, is missing or has
come from elsewhere. A damaged file would be published as a wrong page, so every file is hashed when
a build ends and when the next one begins.
"""

import hashlib
import json
from collections.abc import Mapping
from pathlib import Path
from typing import NamedTuple

RECORD = "kept.json"
BUSY = "busy"  # there from the beginning of a build to its end; after a build that was killed too


class Kept(NamedTuple):
    """What is remembered of a page from one build to the next."""

    key: str  # changes when the page must be made anew
    files: tuple[str, ...]  # further files of the site that belong to it


def kept_pages(folder: Path, everything: str) -> dict[str, Kept] | None:
    """Return the last build's pages by path; None where its files can't be trusted."""
    if (folder / BUSY).exists():
        return None
    try:
        record = json.loads((folder / RECORD).read_text("utf-8"))
        pages = {path: Kept(key, tuple(files)) for path, (key, files) in record["pages"].items()}
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return None
    return pages if record.get("seal") == _seal(folder, everything, pages) else None


def keep_pages(folder: Path, everything: str, pages: Mapping[str, Kept]) -> None:
    """Remember the pages for the next build, with the seal of all files as they are now."""
    seal = _seal(folder, everything, pages)
    text = json.dumps({"seal": seal, "pages": pages}, sort_keys=True)
    (folder / RECORD).write_text(text, "utf-8")


def _seal(folder: Path, everything: str, pages: Mapping[str, Kept]) -> str:
    """Hash every file with its name, all that pages depend on, and what is remembered of them."""
    seal = hashlib.sha256(json.dumps([everything, pages], sort_keys=True).encode())
    for file in sorted(file for file in folder.rglob("*") if file.is_file()):
        if file.name not in (RECORD, BUSY):
            with file.open("rb") as content:
                hash_ = hashlib.file_digest(content, "sha256").hexdigest()
            seal.update(f"\0{file.relative_to(folder).as_posix()}\0{hash_}".encode())
    return seal.hexdigest()
