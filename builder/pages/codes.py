"""Trouble codes: what each means in the shop's own words, and which trees handle it.

In: the catalogue. Out: `Page`s. A code that no tree handles says so.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from builder.model.knowledge import CodeEntry
from builder.model.library import Library
from builder.pages import addresses
from builder.pages.catalogue import Catalogue, Trees, short_code
from builder.pages.page import Page
from builder.pages.render import render
from builder.trade.codes import Code, code_owner, parse_code
from builder.trade.failure_types import failure_type_byte
from builder.wording import phrases

OWNERS = {
    "standard": "Generic: the meaning is the same with every maker",
    "maker": "The maker's own: it means something only with the make; "
    "look it up in the maker's service information",
}


@dataclass(frozen=True, slots=True)
class CodeView:
    """A code, ready to be laid out."""

    text: str
    short: str
    system: str  # powertrain, chassis, body, network; "" where the code is malformed
    owner: str
    entry: CodeEntry | None
    module: str
    kinds: tuple[tuple[str, str], ...]  # three-byte forms in use, and what their last byte says
    trees: Trees


def code_pages(catalogue: Catalogue) -> Iterator[Page]:
    """Yield the index of codes and the page of each."""
    views = code_views(catalogue)
    body = render("codes.html", "codes/index", codes=views)
    yield Page("codes/index", "Codes", body, summary="Every trouble code this shop knows")
    for view in views:
        path = addresses.code(view.text)
        title = f"{view.text} {view.short}".strip()
        yield Page(path, title, render("code.html", path, code=view))


def code_views(catalogue: Catalogue) -> list[CodeView]:
    """Prepare every code that the shop's list or a tree names."""
    known = {short_code(code) for code in catalogue.library.codes}
    return [_view(catalogue, code) for code in sorted(known | catalogue.by_code.keys())]


def meaning(library: Library, code: str) -> str:
    """Say what a code means, with its failure type where it has one."""
    entry = library.codes.get(code) or library.codes.get(short_code(code))
    kind = _kind(library, code)
    short = str(entry.short) if entry else ""
    return f"{short}: {kind}" if short and kind else short or kind


def _view(catalogue: Catalogue, text: str) -> CodeView:
    parsed = parse_code(text)
    entry = catalogue.library.codes.get(text)
    trees = catalogue.by_code.get(text, ())
    return CodeView(
        text=text,
        short=str(entry.short) if entry else "",
        system=parsed.system if isinstance(parsed, Code) else "",
        owner=OWNERS[code_owner(parsed)] if isinstance(parsed, Code) else "",
        entry=entry,
        module=phrases.module_name(entry.module, catalogue.library)
        if entry and entry.module
        else "",
        kinds=tuple(_kinds(catalogue, text, trees)),
        trees=trees,
    )


def _kinds(catalogue: Catalogue, text: str, trees: Trees) -> Iterator[tuple[str, str]]:
    used = {str(code) for tree in trees for code in tree.symptom.codes}
    used |= {str(code) for code in catalogue.library.codes}
    for code in sorted(used):
        if "-" in code and short_code(code) == text:
            yield code, meaning(catalogue.library, code)


def _kind(library: Library, code: str) -> str:
    parsed = parse_code(code)
    if not isinstance(parsed, Code) or parsed.failure_type is None:
        return ""
    own = library.failure_types.get(f"{parsed.failure_type:02X}")
    found = failure_type_byte(parsed.failure_type)
    return str(own.short).lower() if own else found.words or found.category
