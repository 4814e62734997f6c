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
from builder.site.manifest import listed_files, only_ours
from builder.site.publish import publish
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

    Raises FileExistsError where `out` holds a file that no build wrote or that was changed since,
    and where a shop without trees would take the place of a site that has some.
    """
    out = out.resolve()
    before = only_ours(out)
    if given.findings is None and not given.library.trees:
        _keep_trees(out)
    own, findings = own_settings(given.shop)
    if any(finding.severity is Severity.ERROR for finding in findings):
        return Built(findings=findings)
    settings = engine.settings(given.library.shop, own)
    everything = _everything(given, settings)
    with open_work(given.cache, everything) as work:
        if not work.before:
            engine.write_theme(work.folder, given.shop / "site_config" / "overrides")
            engine.write_settings(work.folder, settings)
        _put_pages(work, given)
        if not given.approved():
            close_work(work)
            return Built(findings=findings)
        try:
            engine.run(work.folder, work.frames)
        except MkDocsException as error:
            return Built(findings=(*findings, unusable(str(error))))
        publish(work, out, before)
        close_work(work)
    return Built(len(work.now), findings)


def _keep_trees(out: Path) -> None:
    held = [name for name in listed_files(out) or () if name.startswith("trees/")]
    if held:
        raise FileExistsError(
            f"this shop has no trees, and the site in {out} has some ({held[0]}): it stays as it"
            " was.\n  hint: is `trees/` of the shop where it should be? If you do want a site"
            " without trees, delete the folder of the old one first"
        )


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
    """Return a key of all that every page depends on: our code, the engine, the knowledge."""
    package = Path(__file__).parents[1]
    folders = (package, given.shop / "kb", given.shop / "site_config")
    files = (file for folder in folders for file in _files(folder))
    contents = (f"{file} {file.read_bytes().hex()}" for file in files)
    return digest(engine.versions(), sorted(settings.items()), *contents)


def _files(folder: Path) -> list[Path]:
    found = (file for file in folder.rglob("*") if "__pycache__" not in file.parts)
    return sorted(file for file in found if file.is_file())
