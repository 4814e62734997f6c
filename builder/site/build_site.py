"""The site, from a checked library to a folder that can be opened.

In: `SiteInput`: a shop, its library, a function that reads one tree. Out: the site in a folder, and
how much it holds. Nothing is checked here: the caller has done that. The old site stays whole until
the new one is complete.
"""

import sqlite3
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, fields, replace
from pathlib import Path
from typing import Any, NamedTuple

from builder.cache.database import Cache, note, temporary, transaction
from builder.cache.digest import digest, file_digest, files_in
from builder.cores.progress import Progress, no_progress
from builder.model.library import Library
from builder.model.tree import Tree
from builder.pages.contents import shop_pages
from builder.site.assets import write_assets, write_files
from builder.site.engine import engine_key, engine_settings, frame_pages
from builder.site.manifest import FolderState, checked_folder, listed_files
from builder.site.page_cache import (
    PageCache,
    drop_removed_pages,
    open_page_cache,
    put_engine_file,
    put_page,
)
from builder.site.page_index import INDEX_FILE, page_index
from builder.site.procedure_pages import put_procedures
from builder.site.publish import publish, write_pages
from builder.site.published_pictures import write_pictures
from builder.site.swap import folder_beside
from builder.site.tree_pages import TreeInput, put_trees

# Every page may show the knowledge. What a page shows of other trees is in the page's own key.
_TREE_FIELDS = {"trees", "listings", "callers", "entry_numbers", "silences", "complete"}
_KNOWLEDGE_FIELDS = tuple(one.name for one in fields(Library) if one.name not in _TREE_FIELDS)


@dataclass(frozen=True, slots=True)
class SiteInput:
    """Everything that a build of the site needs."""

    shop: Path
    cache: Cache
    library: Library
    read_tree: Callable[[str], Tree]  # by ID; trees are read one at a time and not kept
    prints: bool = True
    files: Mapping[str, str] = field(default_factory=dict)  # further files of the site, as text
    progress: Progress = no_progress


class SiteCounts(NamedTuple):
    """How much a finished site holds."""

    pages: int
    sheets: int


def build_site(site: SiteInput, out: Path) -> SiteCounts:
    """Render what changed, frame it, and put the new site in the place of the old one.

    Raises FileExistsError where `out` is a link, where it holds a file that no build wrote or that
    somebody changed, and where a shop without trees would replace a site that has some.
    """
    if out.is_symlink():  # it may have come with a pull request, and point anywhere
        raise FileExistsError(f"{out} is a link: delete it, or name the folder itself with --out")
    out = out.resolve()
    before = checked_folder(out)
    if not site.library.trees:
        _refuse_to_drop_trees(out)
    try:
        return _build(site, out, before)
    except sqlite3.Error as error:  # the cache is full, locked or damaged: build without it
        note(site.cache, error)
        site.cache.connection.rollback()
        with temporary() as spare:
            return _build(replace(site, cache=spare), out, before)


def _build(site: SiteInput, out: Path, before: FolderState) -> SiteCounts:
    settings = engine_settings(site.library.shop)
    pages = open_page_cache(site.cache, _pages_key(site, settings), engine_key(settings))
    _put_pages(pages, site)
    site.progress("Framing pages", 0, len(pages.unframed))
    for name, content in frame_pages(pages.unframed, settings):
        put_engine_file(pages, name, content)
    with folder_beside(out) as folder:
        new = folder / "new"
        write_assets(site.library, site.cache, new)
        write_pictures(site.shop, site.library.pictures, site.cache, new)
        write_files({**site.files, INDEX_FILE: page_index(site.library, site.prints)}, new)
        publish(new, write_pages(pages, new), out, before)
    with transaction(site.cache):
        drop_removed_pages(pages)
    sheets = sum(name.endswith(".pdf") for page in pages.this_build.values() for name in page.files)
    return SiteCounts(len(pages.this_build), sheets)


def _refuse_to_drop_trees(out: Path) -> None:
    trees = [name for name in listed_files(out) or () if name.startswith("trees/")]
    if trees:
        raise FileExistsError(
            f"this shop has no trees, but the site in {out} has some ({trees[0]}), so the site is"
            " unchanged.\n  hint: is the shop's `trees/` folder where it should be? If you do want"
            " a site without trees, delete the old site's folder first"
        )


def _put_pages(pages: PageCache, site: SiteInput) -> None:
    for page in shop_pages(site.library):
        put_page(pages, page)
    trees = TreeInput(site.library, site.read_tree, site.prints)
    put_procedures(pages, trees)
    put_trees(pages, trees, site.progress)


def _pages_key(site: SiteInput, settings: dict[str, Any]) -> str:
    """Hash what every page depends on: this program's files, the engine, the knowledge.

    The knowledge is hashed as it was read, not as it is on the disk: the file may have been saved
    again, and its new content must not become the key of pages made from the old one.
    """
    code = (file_digest(file) for file in files_in(Path(__file__).parents[1]))
    knowledge = (repr(getattr(site.library, name)) for name in _KNOWLEDGE_FIELDS)
    return digest(engine_key(settings), *knowledge, *code)
