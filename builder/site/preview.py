"""The preview: one state of a shop as a site, whose files are made when somebody looks at them.

In: a `PreviewInput`, and the preview before it. Out: files by name, with the bytes that a build
gives them. So after a save nothing is rendered but what is open. The page of a file with errors has
its findings at the top, and below them what it was when it last had none. The address of a tree
leads to its new one after it was renamed.
"""

import threading
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from markupsafe import Markup

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.tree import Tree
from builder.pages import addresses
from builder.pages.findings import MarkedLines, broken_page, findings_page
from builder.pages.page import Page
from builder.pages.walk_scripts import walk_path
from builder.site.assets import SCRIPTS, fixed_files
from builder.site.engine import engine_settings
from builder.site.frame_store import FrameStore
from builder.site.moved_trees import moved_trees
from builder.site.page_frames import frame_form, in_frame
from builder.site.page_index import INDEX_FILE, page_index
from builder.site.published_pictures import PICTURES, published_picture
from builder.site.rendered_shop import RenderedShop

_FINDINGS = "findings"  # the page of all
# By folder of the shop: the address of the page that is made from one file.
_PAGES: Mapping[str, Callable[[str], str]] = {
    "trees": addresses.tree_path,
    "kb/procedures": addresses.procedure_path,
    "kb/how-to": addresses.how_to_path,
    "kb/modules": addresses.module_path,
    "kb/vehicles": addresses.vehicle_path,
}


@dataclass(frozen=True, slots=True)
class PreviewInput:
    """Everything that a preview shows."""

    shop: Path
    library: Library  # with every summary loaded: requests come on other threads
    read_tree: Callable[[str], Tree]  # by ID, from the texts that the library was made from
    findings: tuple[Finding, ...]
    waiting: tuple[Finding, ...]  # their pages may lack something that can't be read now
    lines: MarkedLines


class Preview:
    """The site of one state of the shop."""

    def __init__(self, source: PreviewInput, before: "Preview | None" = None) -> None:
        """Take over frames, and the sound pages of files that have errors now."""
        self._source = source
        self._rendered = RenderedShop(source.library, source.read_tree)
        self._frames = _frames(source.library, before)
        self._errors = _errors_by_page((*source.findings, *source.waiting))
        self._sound = {path: _last_sound(before, path) for path in self._errors}
        self._files: dict[str, bytes | None] = {}
        self._lock = threading.Lock()
        self.moved: Mapping[str, str] = {}  # the new ID of each renamed tree
        if before:
            old = before._source.library
            self.moved = moved_trees(old, source.library, before.moved)

    def file(self, name: str) -> bytes | None:
        """Return the content of a file of the site; None where there is no such file."""
        with self._lock:
            if name not in self._files:
                self._files[name] = self._file(name)
            return self._files[name]

    def names(self) -> Iterator[str]:
        """Yield the name of every file."""
        self.file("index.html")  # the engine runs, if it hasn't yet
        yield from (*fixed_files(), *SCRIPTS, INDEX_FILE, *self._frames.engine_files)
        yield from (f"{PICTURES.as_posix()}/{name}" for name in self._source.library.pictures)
        yield from map(walk_path, self._rendered.live_trees())
        pages = dict.fromkeys((*self._rendered.paths(), *self._errors, _FINDINGS))
        yield from (f"{path}.html" for path in pages)

    def _file(self, name: str) -> bytes | None:
        if name in fixed_files():
            return fixed_files()[name]
        if name in SCRIPTS:
            return SCRIPTS[name](self._source.library).encode()
        if name == INDEX_FILE:
            return page_index(self._source.library, prints=False).encode()
        if name.startswith("walks/"):
            return self._walk(name.removeprefix("walks/").removesuffix(".js"))
        if name.startswith(f"{PICTURES.as_posix()}/"):
            return self._picture(Path(name).name)
        if name.endswith(".html") and (page := self._page(name.removesuffix(".html"))):
            frame = self._frames.frame(frame_form(page))
            return in_frame(frame, page.title, page.summary, page.body.encode())
        self._prepare_frames()
        return self._frames.engine_files.get(name)

    def _page(self, path: str) -> Page | None:
        self._prepare_frames()
        if path == _FINDINGS:
            return findings_page(self._source.findings, self._source.lines)
        if path not in self._errors:
            return self._rendered.page(path)
        sound = self._sound[path]
        last = sound.page(path) if sound else None
        return broken_page(path, self._errors[path], self._source.lines, last)

    def _prepare_frames(self) -> None:
        """Let the engine run once for all pages; later only for a frame that's missing."""
        if not self._frames.engine_files:
            of_findings = frame_form(Page(_FINDINGS, "", Markup()))
            self._frames.prepare((*self._rendered.likely_frames(), of_findings))

    def _walk(self, id_: str) -> bytes | None:
        """Return the table of a tree's walk, of the same state as its page."""
        shop = self._sound.get(addresses.tree_path(id_), self._rendered)
        return shop.script(id_) if shop else None

    def _picture(self, name: str) -> bytes | None:
        is_known = name in self._source.library.pictures
        return published_picture(self._source.shop, name) if is_known else None


def _frames(library: Library, before: Preview | None) -> FrameStore:
    settings = engine_settings(library.shop)
    if before and before._frames.settings == settings:
        return before._frames
    return FrameStore(settings)


def _last_sound(before: Preview | None, path: str) -> RenderedShop | None:
    """Return the pages of the last state in which the file of a page had no errors."""
    if before is None:
        return None
    return before._sound[path] if path in before._errors else before._rendered


def _errors_by_page(findings: Iterable[Finding]) -> dict[str, list[Finding]]:
    """Collect the findings of each file with errors that has a page of its own."""
    by_file: dict[str, list[Finding]] = {}
    for finding in findings:
        by_file.setdefault(finding.at.file, []).append(finding)
    return {
        path: of_file
        for file, of_file in by_file.items()
        if any(one.severity is Severity.ERROR for one in of_file) and (path := _page_of(file))
    }


def _page_of(file: str) -> str:
    """Return the page that is made from a file of the shop; "" where there is none."""
    stem = file.rpartition(".")[0]
    for folder, address in _PAGES.items():
        if stem.startswith(f"{folder}/"):
            return address(stem.removeprefix(f"{folder}/"))
    return ""
