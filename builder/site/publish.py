"""From the work folder to the site that people open: frames and bodies joined, beside the old site.

In: a work folder after the engine's run, and what the old site held when the build began. Out: the
new site with the list of its files, put in the old one's place whole.
"""

import shutil
from pathlib import Path

from builder.site.manifest import Seen, only_ours, seen, write_manifest
from builder.site.swap import folder_beside, swap
from builder.site.work import PLACEHOLDER, Work, files_of


def publish(work: Work, out: Path, before: Seen) -> None:
    """Join every frame with its body in a new folder, then put that in the place of `out`.

    Raises FileExistsError where a file that is not ours came into `out` while the build ran.
    """
    with folder_beside(out) as folder:
        new = folder / "new"
        _join_all(work, new)
        write_manifest(new)
        if (seen(out) if out.exists() else {}) != before:
            only_ours(out)
        swap(new, out)


def _join_all(work: Work, new: Path) -> None:
    """Lay out the whole site; no folder is made without a file to go into it."""
    for base, below in ((work.pages, "."), (work.frames, "assets")):
        for file in (base / below).rglob("*"):
            if file.is_file() and file.suffix != ".md":
                _copy(file, new / file.relative_to(base))
    _copy(work.frames / "404.html", new / "404.html")
    for path in work.now:
        _join(work, path, new / f"{path}.html")
    for name in files_of(work):
        _copy(work.files / name, new / name)


def _copy(file: Path, to: Path) -> None:
    to.parent.mkdir(parents=True, exist_ok=True)
    shutil.copyfile(file, to)


def _join(work: Work, path: str, to: Path) -> None:
    frame = (work.frames / f"{path}.html").read_bytes()
    before, _, after = frame.partition(PLACEHOLDER.encode())
    body = work.body(path).read_bytes()
    to.parent.mkdir(parents=True, exist_ok=True)
    to.write_bytes(b"".join((before, body, after)))
