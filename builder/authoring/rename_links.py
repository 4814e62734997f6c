"""Links in the shop's Markdown that follow a page to its new name.

In: a shop, and a page by its place: `trees/charging/lamp-on`, `how-to/voltage-drop`. Out: the files
that were written. Articles link as the site has its pages (`../trees/charging/lamp-on.md`), any
Markdown also to the file itself (`trees/charging/lamp-on.yml`). What is in code is no link.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from posixpath import dirname, normpath, relpath
from urllib.parse import quote, unquote

from builder.model.finding import Finding
from builder.reader.folders import listing
from builder.reader.source import read_source
from builder.rules.shared.article_links import PAGE, targets_in

ARTICLES = "kb/how-to"
_FOLDERS = ("kb", "trees", "site_config", "docs")
_FILES = {"trees": ("", (".yml", ".yaml")), "how-to": ("kb/", (".md",))}  # of each kind of page


@dataclass(frozen=True, slots=True)
class PageLink:
    """A link to a tree or an article: `base` is the folder that its path starts from."""

    page: str  # `trees/charging/lamp-on`
    anchor: str  # behind `#`
    base: str
    before: str  # what is before the page in its whole path
    ending: str

    def to(self, page: str, anchor: str) -> str:
        """Return the target that leads to another page or anchor."""
        path = quote(relpath(f"{self.before}{page}{self.ending}", self.base))
        return f"{path}#{anchor}" if anchor else path


def rename_links_to_page(shop: Path, old: str, new: str) -> Iterator[Path]:
    """Let every link to a page lead to its new name; yields the files written."""
    yield from _rewritten(shop, lambda link: link.to(new, link.anchor) if link.page == old else "")


def rename_links_to_anchor(shop: Path, page: str, old: str, new: str) -> Iterator[Path]:
    """Let every link to a place on a page lead to its new anchor; yields the files written."""
    yield from _rewritten(
        shop, lambda link: link.to(page, new) if (link.page, link.anchor) == (page, old) else ""
    )


def _rewritten(shop: Path, new_target: Callable[[PageLink], str]) -> Iterator[Path]:
    for path in _markdown_files(shop):
        if isinstance(read_source(shop, path), Finding):
            continue
        text = path.read_bytes().decode()
        file = path.relative_to(shop).as_posix()
        spots = [(start, target, link) for start, target, is_picture in targets_in(text)
                 if not is_picture and (link := _page_link(file, target))]  # fmt: skip
        edited = text
        for start, target, link in sorted(spots, key=lambda spot: -spot[0]):
            if new := new_target(link):
                edited = edited[:start] + new + edited[start + len(target) :]
        if edited != text:
            path.write_bytes(edited.encode())
            yield path


def _markdown_files(shop: Path) -> list[Path]:
    inside = (shop / name for folder in _FOLDERS for name in listing(shop, folder).files)
    return [*sorted(shop.glob("*.md")), *(path for path in inside if path.suffix == ".md")]


def _page_link(file: str, target: str) -> PageLink | None:
    """Return the tree or the article that a target leads to, from a file of the shop."""
    path, _, anchor = unquote(target).partition("#")
    if dirname(file) == ARTICLES and (ending := PAGE.search(path)):
        whole = normpath(f"how-to/{path}").removesuffix(ending[0])
        if whole.startswith(("how-to/", "trees/")):
            return PageLink(whole, anchor, "how-to", "", ending[0])
    whole = normpath(f"{dirname(file)}/{path}".lstrip("/"))
    for folder, (before, endings) in _FILES.items():
        for end in endings:
            if whole.startswith(f"{before}{folder}/") and whole.endswith(end):
                page = whole.removeprefix(before).removesuffix(end)
                return PageLink(page, anchor, dirname(file) or ".", before, end)
    return None
