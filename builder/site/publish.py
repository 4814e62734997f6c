"""From cached pages to the folder that people open.

In: the page cache, and what the old site held when the build began. Out: the new site with its
manifest, in the place of the old one.
"""

from pathlib import Path

from builder.site.manifest import FolderState, checked_folder, folder_state, write_manifest
from builder.site.offline import write_offline
from builder.site.page_cache import PageCache, framed_page, further_files
from builder.site.swap import swap


def write_pages(pages: PageCache, new: Path) -> None:
    """Write every page and every further file into a new folder."""
    for path in pages.this_build:
        _write(new / f"{path}.html", framed_page(pages, path))
    for name, content in further_files(pages):
        _write(new / name, content)


def publish(new: Path, out: Path, before: FolderState) -> None:
    """Write worker and manifest of a finished site, and put the site in the place of `out`.

    Raises FileExistsError where somebody else's file came into `out` during the build.
    """
    write_offline(new)
    write_manifest(new)
    if (folder_state(out) if out.exists() else {}) != before:
        checked_folder(out)
    swap(new, out)


def _write(file: Path, content: bytes) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_bytes(content)
