"""The work folder: what the engine reads, and what the next build need not make again.

In: pages. Out: `pages/` (Markdown for the engine), `bodies/` (what goes into the frames), `frames/`
(the engine's output), `files/` (prints). A page is written only where it changed, so that the
engine frames only pages that are new or have a new title.

The folder is a cache: it may be deleted at any time. Where its files can't be trusted (see
`last_build`), a build begins with an empty folder; where nothing can be written there, it works in
another one.
"""

import errno
import hashlib
import json
import os
import shutil
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

from markupsafe import escape

from builder.pages.page import Page
from builder.site.last_build import BUSY, Kept, keep_pages, kept_pages

try:
    import fcntl
except ImportError:  # Windows: two builds at the same time are then the user's to avoid
    fcntl = None  # type: ignore[assignment]

PLACEHOLDER = "<!-- the page goes in here -->"

# Trouble of a disk that comes without the name of a file.
OF_A_DISK = {errno.ENOSPC, errno.EDQUOT, errno.EFBIG, errno.EIO, errno.EROFS, errno.ENOLCK}


@dataclass(frozen=True, slots=True)
class Work:
    """An open work folder; `now` grows while pages are put in."""

    folder: Path
    everything: str  # changes when every page must be made anew
    before: Mapping[str, Kept]  # by the page's path, from the last build
    now: dict[str, Kept] = field(default_factory=dict)  # by the page's path, of this build

    @property
    def pages(self) -> Path:
        """Where the engine reads."""
        return self.folder / "pages"

    @property
    def frames(self) -> Path:
        """Where the engine writes."""
        return self.folder / "frames"

    @property
    def files(self) -> Path:
        """Where further files lie as they will in the site."""
        return self.folder / "files"

    def body(self, path: str) -> Path:
        """Return the file that goes into the frame of a page."""
        return self.folder / "bodies" / f"{path}.html"


def digest(*parts: object) -> str:
    """Return a short hash of texts."""
    return hashlib.sha256("\0".join(map(str, parts)).encode()).hexdigest()[:20]


@contextmanager
def open_work(folder: Path, everything: str) -> Iterator[Work]:
    """Open the work folder of the last build, or an empty one where that cannot be trusted.

    A second build of the same shop waits here until the first has finished. Raises OSError where
    the folder can't be used.
    """
    if not folder.is_absolute():  # a user without a home has no cache either
        raise OSError(errno.ENOENT, os.strerror(errno.ENOENT), str(folder))
    folder.mkdir(parents=True, exist_ok=True)
    with _alone(_lock(folder)):
        before = kept_pages(folder, everything)
        if before is None:
            shutil.rmtree(folder)
            (folder / "pages").mkdir(parents=True)
        (folder / BUSY).touch()
        yield Work(folder, everything, before or {})


@contextmanager
def _alone(file: Path) -> Iterator[None]:
    """Hold a lock that the system lets go of when the process ends, however it ends."""
    with file.open("w") as held:
        if fcntl:
            fcntl.flock(held, fcntl.LOCK_EX)
        yield


def comes_from(folder: Path, error: OSError) -> bool:
    """Whether an error comes from a folder that can't be used, or may do so: a full disk."""
    if isinstance(error, shutil.Error) or error.errno in OF_A_DISK:
        return True
    if error.filename is None:
        return False
    at_fault = Path(os.fsdecode(error.filename))
    return at_fault in (_lock(folder), *folder.parents) or at_fault.is_relative_to(folder)


def _lock(folder: Path) -> Path:
    return folder.with_name(f"{folder.name}.lock")


def is_fresh(work: Work, path: str, key: str) -> bool:
    """Whether the last build made this page from the same things; if so it is kept."""
    last = work.before.get(path)
    if last is None or last.key != key:
        return False
    work.now[path] = last
    return True


def put(work: Work, page: Page, key: str = "", files: Mapping[str, bytes] | None = None) -> None:
    """Write a page where it differs from the last build's; without a key its text is the key."""
    text, files = markdown(page), files or {}
    key = key or digest(text, page.body)
    if is_fresh(work, page.path, key):
        return
    work.now[page.path] = Kept(key, tuple(files))
    markdown_file = work.pages / f"{page.path}.md"
    if not markdown_file.exists() or markdown_file.read_text("utf-8") != text:
        _write(markdown_file, text.encode())
        # The engine would compare dates, and a clock can be set back.
        (work.frames / f"{page.path}.html").unlink(missing_ok=True)
    _write(work.body(page.path), page.body.encode())
    for name, content in files.items():
        _write(work.files / name, content)


def close_work(work: Work) -> None:
    """Remember what this build made, for the next."""
    keep_pages(work.folder, work.everything, work.now)
    (work.folder / BUSY).unlink()


def drop_gone(work: Work) -> None:
    """Delete what belongs to pages that this build no longer has."""
    for path in work.before.keys() - work.now.keys():
        for file in (
            work.pages / f"{path}.md",
            work.frames / f"{path}.html",
            work.body(path),
            *(work.files / name for name in work.before[path].files),
        ):
            file.unlink(missing_ok=True)


def files_of(work: Work) -> Iterable[str]:
    """Return the names of all further files of this build."""
    return (name for kept in work.now.values() for name in kept.files)


def markdown(page: Page) -> str:
    """Write the page as the engine reads it: front matter, heading, the place of the body.

    All text is escaped as HTML here, because the engine's templates do not escape.
    """
    front = {"title": str(escape(page.title)), "description": str(escape(page.summary))}
    lines = [f"{name}: {json.dumps(value)}" for name, value in front.items()]
    if page.scripts:
        lines.append(f"scripts: {json.dumps(page.scripts)}")
    heading = f'<h1 id="title">{escape(page.title)}</h1>'
    return "\n".join(["---", *lines, "---", "", heading, "", PLACEHOLDER, ""])


def _write(file: Path, content: bytes) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_bytes(content)
