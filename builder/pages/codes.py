"""DTCs: what each means in the shop's own words, and which trees cover it.

In: the catalog of trees. Out: `Page`s. A DTC without a tree says so.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from builder.model.knowledge import CodeEntry
from builder.model.library import Library
from builder.pages import addresses
from builder.pages.page import Page
from builder.pages.render import render
from builder.pages.tree_catalog import TreeCatalog, TreeList, two_byte_code
from builder.trade.codes import Code, code_owner, parse_code
from builder.trade.failure_types import failure_type_byte
from builder.wording.sentences import module_name

OWNERS = {
    "standard": "Generic: means the same for every vehicle maker",
    "maker": "Maker-specific: look it up in the vehicle maker's service information for this make",
}


@dataclass(frozen=True, slots=True)
class CodeView:
    """A DTC, ready to be laid out."""

    text: str
    short: str
    system: str  # powertrain, chassis, body, network; "" where the DTC is malformed
    owner: str
    entry: CodeEntry | None
    module: str
    failures: tuple[tuple[str, str], ...]  # DTCs with a failure type byte, and what it means
    trees: TreeList


def code_pages(catalog: TreeCatalog) -> Iterator[Page]:
    """Yield the list of DTCs and the page of each."""
    views = code_views(catalog)
    body = render("codes.html", "codes/index", codes=views)
    yield Page("codes/index", "DTCs", body, summary="Every DTC our shop knows")
    for view in views:
        path = addresses.code_path(view.text)
        title = f"{view.text} {view.short}".strip()
        yield Page(path, title, render("code.html", path, code=view))


def code_views(catalog: TreeCatalog) -> list[CodeView]:
    """Prepare every DTC that the shop's list or a tree names."""
    listed = {two_byte_code(code) for code in catalog.library.codes}
    return [_view(catalog, code) for code in sorted(listed | catalog.by_code.keys())]


def code_meaning(library: Library, code: str) -> str:
    """Return what a DTC means, with its failure type where it has one."""
    entry = library.codes.get(code) or library.codes.get(two_byte_code(code))
    failure = _failure(library, code)
    short = str(entry.short) if entry else ""
    return f"{short}: {failure}" if short and failure else short or failure


def _view(catalog: TreeCatalog, text: str) -> CodeView:
    parsed = parse_code(text)
    entry = catalog.library.codes.get(text)
    trees = catalog.by_code.get(text, ())
    return CodeView(
        text=text,
        short=str(entry.short) if entry else "",
        system=parsed.system if isinstance(parsed, Code) else "",
        owner=OWNERS[code_owner(parsed)] if isinstance(parsed, Code) else "",
        entry=entry,
        module=module_name(entry.module, catalog.library) if entry and entry.module else "",
        failures=tuple(_failures(catalog, text, trees)),
        trees=trees,
    )


def _failures(catalog: TreeCatalog, text: str, trees: TreeList) -> Iterator[tuple[str, str]]:
    used = {str(code) for tree in trees for code in tree.symptom.codes}
    used |= {str(code) for code in catalog.library.codes}
    for code in sorted(used):
        if "-" in code and two_byte_code(code) == text:
            yield code, code_meaning(catalog.library, code)


def _failure(library: Library, code: str) -> str:
    parsed = parse_code(code)
    if not isinstance(parsed, Code) or parsed.failure_type is None:
        return ""
    own = library.failure_types.get(f"{parsed.failure_type:02X}")
    standard = failure_type_byte(parsed.failure_type)
    return str(own.short).lower() if own else standard.words or standard.category
