"""The site, from the library and the trees to a folder that can be opened.

In: `Input`: a shop, its library, a reader of single trees. Out: the site in a folder, and `Built`.
Nothing is judged here: whoever calls has checked first, and the old site stays whole until the new
one is.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from mkdocs.exceptions import MkDocsException

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.tree import Tree
from builder.pages.contents import shop_pages
from builder.pages.findings import broken_page, findings_page
from builder.site import engine
from builder.site.assets import write_assets, write_files
from builder.site.pictures import write_pictures
from builder.site.publish import may_replace, publish
from builder.site.settings import own_settings, unusable
from builder.site.trees import put_trees
from builder.site.work import Work, close_work, digest, drop_gone, open_work, put


@dataclass(frozen=True, slots=True)
class Input:
    """All that a build of the site starts from."""

    shop: Path
    cache: Path  # a folder for what the next build need not make again
    library: Library
    # By id: trees are read one by one and dropped. None: it has an error and cannot be shown.
    read_tree: Callable[[str], Tree | None]
    rests_on: str  # hash of what every page rests on: our code and the knowledge
    prints: bool = True
    files: Mapping[str, str] = field(default_factory=dict)  # further files of the site, as text
    findings: tuple[Finding, ...] | None = None  # shown on pages while an author is at work
    # Asked once all pages are made, before they take the place of the old ones.
    approved: Callable[[], bool] = lambda: True


@dataclass(frozen=True, slots=True)
class Built:
    """What a build did; with an error among its findings it left the old site as it was."""

    pages: int = 0
    findings: tuple[Finding, ...] = ()


def build_site(given: Input, out: Path) -> Built:
    """Write every page that changed, frame it, and put the new site in the old one's place.

    Raises FileExistsError where `out` holds something else than a site.
    """
    if not may_replace(out):
        raise FileExistsError(f"{out} holds other files than a site: give a new or an empty folder")
    own, findings = own_settings(given.shop)
    if any(finding.severity is Severity.ERROR for finding in findings):
        return Built(findings=findings)
    settings = engine.settings(given.library.shop, own)
    everything = digest(engine.versions(), sorted(settings.items()), given.rests_on)
    with open_work(given.cache, everything) as work:
        if not work.before:
            engine.write_theme(work.folder, given.shop / "site_config" / "overrides")
            engine.write_settings(work.folder, settings)
        findings += _put_pages(work, given)
        unfit = any(finding.severity is Severity.ERROR for finding in findings)
        if (unfit and given.findings is None) or not given.approved():
            close_work(work)
            return Built(findings=findings)
        try:
            engine.run(work.folder, work.frames)
        except MkDocsException as error:
            return Built(findings=(*findings, unusable(str(error))))
        publish(work, out)
        close_work(work)
    return Built(len(work.now), findings)


def _put_pages(work: Work, given: Input) -> tuple[Finding, ...]:
    """Write all pages; return the mistakes that only writing brings to light."""
    write_assets(given.library, work.pages)
    photos = given.cache.with_name("photos")
    unfit = write_pictures(given.shop, sorted(given.library.pictures), work.pages, photos)
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
    return unfit


def _broken(findings: Iterable[Finding]) -> dict[str, list[Finding]]:
    """Gather the errors of each tree; the id of a tree is the path of its file."""
    broken: dict[str, list[Finding]] = {}
    for finding in findings:
        folder, _, rest = finding.at.file.partition("/")
        if folder == "trees" and finding.severity is Severity.ERROR:
            broken.setdefault(rest.rsplit(".", 1)[0], []).append(finding)
    return broken
