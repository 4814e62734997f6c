"""The work folder: what the engine reads, and what the next build need not make again.

In: pages. Out: `pages/` (Markdown for the engine), `bodies/` (what goes into the frames), `frames/`
(the engine's output), `prints/`. A page is written only where it changed, so that the engine frames
only pages that are new or have a new title.

The folder is a cache: it may be deleted at any time. A build that was killed leaves the mark `busy`
behind, and the next build then begins with an empty folder.
"""

import hashlib
import json
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

from markupsafe import escape

from builder.pages.page import Page

try:
    import fcntl
except ImportError:  # Windows: two builds at the same time are then the user's to avoid
    fcntl = None  # type: ignore[assignment]

PLACEHOLDER = "<!-- the page goes in here -->"


@dataclass(frozen=True, slots=True)
class Work:
    """An open work folder; `keys` grows while pages are put in."""

    folder: Path
    everything: str  # changes when every page must be made anew
    before: dict[str, str] = field(default_factory=dict)  # path to key, from the last build
    keys: dict[str, str] = field(default_factory=dict)  # path to key, of this build

    @property
    def pages(self) -> Path:
        """Where the engine reads."""
        return self.folder / "pages"

    @property
    def frames(self) -> Path:
        """Where the engine writes."""
        return self.folder / "frames"

    def body(self, path: str) -> Path:
        """Return the file that goes into the frame of a page."""
        return self.folder / "bodies" / f"{path}.html"

    def print(self, path: str) -> Path:
        """Return the file of a print."""
        return self.folder / "prints" / f"{path}.pdf"


def digest(*parts: object) -> str:
    """Return a short hash of texts."""
    return hashlib.sha256("\0".join(map(str, parts)).encode()).hexdigest()[:20]


@contextmanager
def open_work(folder: Path, everything: str) -> Iterator[Work]:
    """Open the work folder of the last build, or an empty one where that cannot be trusted.

    A second build of the same shop waits here until the first has finished.
    """
    folder.mkdir(parents=True, exist_ok=True)
    (folder.parent / ".gitignore").write_text("*\n", "utf-8")
    with _alone(folder.with_name(f"{folder.name}.lock")):
        before = _last_keys(folder, everything)
        if before is None:
            shutil.rmtree(folder)
            (folder / "pages").mkdir(parents=True)
        (folder / "busy").touch()
        yield Work(folder, everything, before or {})


@contextmanager
def _alone(file: Path) -> Iterator[None]:
    """Hold a lock that the system lets go of when the process ends, however it ends."""
    with file.open("w") as held:
        if fcntl:
            fcntl.flock(held, fcntl.LOCK_EX)
        yield


def _last_keys(folder: Path, everything: str) -> dict[str, str] | None:
    if (folder / "busy").exists():
        return None
    try:
        kept = json.loads((folder / "keys.json").read_text("utf-8"))
    except (OSError, ValueError):
        return None
    return dict(kept["keys"]) if kept.get("everything") == everything else None


def is_fresh(work: Work, path: str, key: str) -> bool:
    """Whether the last build made this page from the same things; if so it is kept."""
    if work.before.get(path) != key:
        return False
    work.keys[path] = key
    return True


def put(work: Work, page: Page, key: str = "") -> None:
    """Write a page where it differs from the last build's; without a key its text is the key."""
    text = markdown(page)
    key = key or digest(text, page.body)
    if is_fresh(work, page.path, key):
        return
    work.keys[page.path] = key
    _write_if_new(work.pages / f"{page.path}.md", text)
    _write(work.body(page.path), page.body)


def close_work(work: Work) -> None:
    """Remember what this build made, for the next."""
    kept = {"everything": work.everything, "keys": work.keys}
    _write(work.folder / "keys.json", json.dumps(kept, sort_keys=True))
    (work.folder / "busy").unlink()


def drop_gone(work: Work) -> None:
    """Delete what belongs to pages that this build no longer has."""
    for path in work.before.keys() - work.keys.keys():
        for file in (
            work.pages / f"{path}.md",
            work.frames / f"{path}.html",
            work.body(path),
            work.print(path),
        ):
            file.unlink(missing_ok=True)


def markdown(page: Page) -> str:
    """Write the page as the engine reads it: front matter, heading, the place of the body.

    All text is escaped as HTML here, because the engine's templates do not escape.
    """
    front = {"title": str(escape(page.title)), "description": str(escape(page.summary))}
    if page.scripts:
        front["scripts"] = list(page.scripts)  # type: ignore[assignment]
    lines = [f"{name}: {json.dumps(value)}" for name, value in front.items()]
    heading = f'<h1 id="title">{escape(page.title)}</h1>'
    return "\n".join(["---", *lines, "---", "", heading, "", PLACEHOLDER, ""])


def _write_if_new(file: Path, text: str) -> None:
    if not file.exists() or file.read_text("utf-8") != text:
        _write(file, text)


def _write(file: Path, text: str) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_text(text, "utf-8", newline="\n")
