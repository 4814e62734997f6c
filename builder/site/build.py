"""The site, from the library and the trees to a folder that can be opened.

In: `Input`: a shop, its library, a reader of single trees. Out: the site in a folder, and `Built`.
Nothing is judged here: whoever calls has checked first, and the old site stays whole until the new
one is.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, fields
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.tree import Tree
from builder.pages.contents import shop_pages
from builder.pages.findings import broken_page, findings_page
from builder.site import engine
from builder.site.assets import write_assets, write_files
from builder.site.publish import may_replace, publish
from builder.site.trees import put_trees
from builder.site.work import (
    Work,
    close_work,
    comes_from,
    digest,
    drop_gone,
    open_work,
    put,
)

# What every page may show; what a page shows of other trees is in its own key.
OF_TREES = {"trees", "gists", "callers", "entries", "silences", "whole"}
KNOWLEDGE = tuple(one.name for one in fields(Library) if one.name not in OF_TREES)


@dataclass(frozen=True, slots=True)
class Input:
    """All that a build of the site starts from."""

    shop: Path
    cache: Path  # a folder for what the next build need not make again
    library: Library
    # By id: trees are read one by one and dropped. None: it has an error and cannot be shown.
    read_tree: Callable[[str], Tree | None]
    prints: bool = True
    files: Mapping[str, str] = field(default_factory=dict)  # further files of the site, as text
    findings: tuple[Finding, ...] | None = None  # shown on pages while an author is at work
    # Asked once all pages are made, before they take the place of the old ones.
    approved: Callable[[], bool] = lambda: True


@dataclass(frozen=True, slots=True)
class Built:
    """What a build did."""

    pages: int = 0  # none where it was not approved: the old site is as it was
    notes: tuple[str, ...] = ()  # what the user has to know of the machine, in plain words


def build_site(given: Input, out: Path) -> Built:
    """Write every page that changed, frame it, and put the new site in the old one's place.

    Raises FileExistsError where `out` holds something else than a site, or is a link.
    """
    if out.is_symlink():  # it may have come with a pull request, and lead anywhere
        raise FileExistsError(f"{out} is a link: delete it, or name the folder itself with --out")
    if not may_replace(out):
        raise FileExistsError(f"{out} holds other files than a site: give a new or an empty folder")
    settings = engine.settings(given.library.shop)
    everything = _everything(given, settings)
    try:
        with open_work(given.cache, everything) as work:
            return Built(_build(work, given, settings, out))
    except OSError as error:
        if not comes_from(given.cache, error):
            raise
        note = f"the cache folder {given.cache} can't be used ({error.strerror or error})"
    with (
        TemporaryDirectory(prefix="baytree-") as folder,
        open_work(Path(folder) / "work", everything) as work,
    ):
        pages = _build(work, given, settings, out)
    return Built(pages, (f"{note}; every page was made anew in a temporary folder",))


def _build(work: Work, given: Input, settings: dict[str, Any], out: Path) -> int:
    """Make, frame and publish the pages; return how many there are, or 0 if not approved."""
    if not work.before:
        engine.write_theme(work.folder)
        engine.write_settings(work.folder, settings)
    _put_pages(work, given)
    approved = given.approved()
    if approved:
        engine.run(work.folder, work.frames)
        publish(work, out)
    close_work(work)
    return len(work.now) if approved else 0


def _put_pages(work: Work, given: Input) -> None:
    write_assets(given.shop, given.library, work.pages)
    write_files(given.files, work.pages)
    for page in shop_pages(given.library):
        put(work, page)
    broken = _broken(given.findings or ())
    for id_, mistakes in broken.items():
        put(work, broken_page(id_, mistakes))
    if given.findings is not None:
        put(work, findings_page(given.findings))
    put_trees(work, given.library, given.read_tree, prints=given.prints, leave_out=broken)
    drop_gone(work)


def _broken(findings: Iterable[Finding]) -> dict[str, list[Finding]]:
    """Gather the errors of each tree; the id of a tree is the path of its file."""
    broken: dict[str, list[Finding]] = {}
    for finding in findings:
        folder, _, rest = finding.at.file.partition("/")
        if folder == "trees" and finding.severity is Severity.ERROR:
            broken.setdefault(rest.rsplit(".", 1)[0], []).append(finding)
    return broken


def _everything(given: Input, settings: Mapping[str, object]) -> str:
    """Return a key of all that every page depends on: our code, the engine, the knowledge.

    The knowledge is taken as it was read and not as it lies on the disk: a file saved meanwhile
    must not lend its key to pages that were made of the one before.
    """
    code = (f"{file} {file.read_bytes().hex()}" for file in _files(Path(__file__).parents[1]))
    knowledge = (_plain(getattr(given.library, name)) for name in KNOWLEDGE)
    return digest(engine.versions(), sorted(settings.items()), *knowledge, *code)


def _plain(value: object) -> str:
    return repr(sorted(value)) if isinstance(value, frozenset) else repr(value)


def _files(folder: Path) -> list[Path]:
    found = (file for file in folder.rglob("*") if "__pycache__" not in file.parts)
    return sorted(file for file in found if file.is_file())
