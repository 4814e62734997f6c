"""From cached pages to the folder that people open.

In: the page cache, and what the old site held when the build began. Out: the new site with its
manifest, in the place of the old one.
"""

import hashlib
from collections.abc import Iterator, Mapping
from pathlib import Path

from builder.site.manifest import FolderState, checked_folder, folder_state, write_manifest
from builder.site.offline import write_offline
from builder.site.page_cache import PageCache, framed_page, further_files
from builder.site.swap import swap


def write_pages(pages: PageCache, new: Path) -> dict[str, str]:
    """Write every page and every further file into a new folder; return the SHA-256 of each."""
    digests: dict[str, str] = {}
    folders: set[Path] = set()
    for name, content in _files(pages):
        file = new / name
        if file.parent not in folders:
            file.parent.mkdir(parents=True, exist_ok=True)
            folders.add(file.parent)
        file.write_bytes(content)
        digests[name] = hashlib.sha256(content).hexdigest()
    return digests


def _files(pages: PageCache) -> Iterator[tuple[str, bytes]]:
    for path in pages.this_build:
        yield f"{path}.html", framed_page(pages, path)
    yield from further_files(pages)


def publish(new: Path, digests: Mapping[str, str], out: Path, before: FolderState) -> None:
    """Write worker and manifest of a finished site, and put the site in the place of `out`.

    `digests` come from `write_pages`. Raises FileExistsError where somebody else's file came into
    `out` during the build.
    """
    write_manifest(new, write_offline(new, digests))
    if (folder_state(out) if out.exists() else {}) != before:
        checked_folder(out)
    swap(new, out)
