"""From pages as they are kept to the site that people open.

In: the work of a build, and what the old site held when it began. Out: the new site with the list
of its files, put in the old one's place whole.
"""

from pathlib import Path

from builder.site.manifest import Seen, only_ours, seen, write_manifest
from builder.site.page_cache import Work, engine_files, files_of, framed
from builder.site.swap import swap


def write_pages(work: Work, new: Path) -> None:
    """Write every page and print into a new folder; no folder is made without a file in it."""
    for path in work.now:
        _write(new / f"{path}.html", framed(work, path))
    for name, content in files_of(work):
        _write(new / name, content)
    for name, content in engine_files(work):
        _write(new / name, content)


def put_in_place(new: Path, out: Path, before: Seen) -> None:
    """List the files of a finished site and put it in the place of `out`.

    Raises FileExistsError where a file that is not ours came into `out` while the build ran.
    """
    write_manifest(new)
    if (seen(out) if out.exists() else {}) != before:
        only_ours(out)
    swap(new, out)


def _write(file: Path, content: bytes) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_bytes(content)
