"""The site, from a sound library to a folder that can be opened.

In: `SiteInput`: a shop, its library, a reader of single trees. Out: the site in a folder, and how
many pages it has. Nothing is judged here: whoever calls has checked first, and the old site stays
whole until the new one is.
"""

import sqlite3
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, fields, replace
from pathlib import Path
from typing import Any, NamedTuple

from builder.cache.database import Cache, note, temporary, transaction
from builder.cache.digest import digest, file_digest, files_in
from builder.cores.progress import Progress, no_progress
from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.tree import Tree
from builder.pages.contents import shop_pages
from builder.pages.findings import broken_tree_page, findings_page
from builder.site import engine
from builder.site.assets import write_assets, write_files
from builder.site.manifest import Seen, listed_files, only_ours
from builder.site.page_cache import Work, begin_work, drop_gone, put, put_frame
from builder.site.publish import put_in_place, write_pages
from builder.site.published_pictures import write_pictures
from builder.site.swap import folder_beside
from builder.site.tree_pages import put_trees

# What every page may show; what a page shows of other trees is in its own key.
OF_TREES = {"trees", "listings", "callers", "entries", "silences", "whole"}
KNOWLEDGE = tuple(one.name for one in fields(Library) if one.name not in OF_TREES)


@dataclass(frozen=True, slots=True)
class SiteInput:
    """All that a build of the site starts from."""

    shop: Path
    cache: Cache
    library: Library
    read_tree: Callable[[str], Tree]  # by id: trees are read one by one and dropped
    prints: bool = True
    files: Mapping[str, str] = field(default_factory=dict)  # further files of the site, as text
    findings: tuple[Finding, ...] | None = None  # shown on pages while an author is at work
    progress: Progress = no_progress


class Built(NamedTuple):
    """How much a finished site holds."""

    pages: int
    sheets: int


def build_site(given: SiteInput, out: Path) -> Built:
    """Make every page that changed, frame it, and put the new site in the old one's place.

    Raises FileExistsError where `out` is a link or holds a
    file that no build wrote or that was changed since, and where a shop without trees would take
    the place of a site that has some.
    """
    if out.is_symlink():  # it may have come with a pull request, and lead anywhere
        raise FileExistsError(f"{out} is a link: delete it, or name the folder itself with --out")
    out = out.resolve()
    before = only_ours(out)
    if given.findings is None and not given.library.trees:
        _keep_trees(out)
    try:
        return _build(given, out, before)
    except sqlite3.Error as error:  # the cache is full, locked or damaged: do without
        note(given.cache, error)
        given.cache.connection.rollback()
        with temporary() as spare:
            return _build(replace(given, cache=spare), out, before)


def _build(given: SiteInput, out: Path, before: Seen) -> Built:
    settings = engine.settings(given.library.shop)
    work = begin_work(given.cache, _everything(given, settings), engine.key(settings))
    _put_pages(work, given)
    given.progress("Framing pages", 0, len(work.unframed))
    for path, frame in engine.frames(work.unframed, settings):
        put_frame(work, path, frame)
    with folder_beside(out) as folder:
        new = folder / "new"
        write_assets(given.library, new)
        write_pictures(given.shop, given.library.pictures, given.cache, new)
        write_files(given.files, new)
        write_pages(work, new)
        put_in_place(new, out, before)
    with transaction(given.cache):
        drop_gone(work)
    return Built(len(work.now), sum(len(kept.files) for kept in work.now.values()))


def _keep_trees(out: Path) -> None:
    held = [name for name in listed_files(out) or () if name.startswith("trees/")]
    if held:
        raise FileExistsError(
            f"this shop has no trees, and the site in {out} has some ({held[0]}): it stays as it"
            " was.\n  hint: is `trees/` of the shop where it should be? If you do want a site"
            " without trees, delete the folder of the old one first"
        )


def _put_pages(work: Work, given: SiteInput) -> None:
    for page in shop_pages(given.library):
        put(work, page)
    broken = _broken(given.findings or ())
    for id_, mistakes in broken.items():
        put(work, broken_tree_page(id_, mistakes))
    if given.findings is not None:
        put(work, findings_page(given.findings))
    put_trees(
        work,
        given.library,
        given.read_tree,
        prints=given.prints,
        leave_out=broken,
        progress=given.progress,
    )


def _broken(findings: Iterable[Finding]) -> dict[str, list[Finding]]:
    """Gather the errors of each tree; the id of a tree is the path of its file."""
    broken: dict[str, list[Finding]] = {}
    for finding in findings:
        folder, _, rest = finding.at.file.partition("/")
        if folder == "trees" and finding.severity is Severity.ERROR:
            broken.setdefault(rest.rsplit(".", 1)[0], []).append(finding)
    return broken


def _everything(given: SiteInput, settings: dict[str, Any]) -> str:
    """Hash what every page depends on: our code and its files, the engine, the knowledge.

    The knowledge is taken as it was read and not as it lies on the disk: a file saved meanwhile
    must not lend its key to pages that were made of the one before.
    """
    code = (file_digest(file) for file in files_in(Path(__file__).parents[1]))
    knowledge = (repr(getattr(given.library, name)) for name in KNOWLEDGE)
    return digest(engine.key(settings), *knowledge, *code)
