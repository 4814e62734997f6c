"""From the work folder to the site that people open: frames and bodies joined, beside the old site.

In: a work folder after the engine's run. Out: the new site, put in the old one's place whole.
"""

import shutil
from pathlib import Path

from builder.site.swap import beside, recover, swap
from builder.site.work import PLACEHOLDER, Work, files_of


def may_replace(out: Path) -> bool:
    """Whether a folder may be put out of the way: there is none, it is empty, or it is a site."""
    if not out.exists():
        return True
    if not out.is_dir():
        return False
    return not any(out.iterdir()) or (out / "assets" / "site.css").is_file()


def publish(work: Work, out: Path) -> None:
    """Join every frame with its body in a new folder, then put that in the place of `out`."""
    out = out.resolve()
    recover(out)
    new = beside(out, "new")
    new.parent.mkdir(parents=True, exist_ok=True)
    shutil.copytree(work.pages, new, ignore=shutil.ignore_patterns("*.md"))
    shutil.copytree(work.frames / "assets", new / "assets", dirs_exist_ok=True)
    shutil.copyfile(work.frames / "404.html", new / "404.html")
    for path in work.now:
        _join(work, path, new)
    for name in files_of(work):
        (new / name).parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(work.files / name, new / name)
    swap(out)


def _join(work: Work, path: str, new: Path) -> None:
    frame = (work.frames / f"{path}.html").read_bytes()
    before, _, after = frame.partition(PLACEHOLDER.encode())
    body = work.body(path).read_bytes()
    (new / f"{path}.html").write_bytes(b"".join((before, body, after)))
