"""The systems of the vehicle, each with its trees.

In: the catalog of trees. Out: `Page`s.
"""

from collections.abc import Iterator

from builder.model.library import Library
from builder.model.summary import TreeSummary
from builder.pages import addresses
from builder.pages.page import Page
from builder.pages.render import render
from builder.pages.tree_catalog import TreeCatalog
from builder.wording.sentences import capitalized


def system_pages(catalog: TreeCatalog) -> Iterator[Page]:
    """Yield the list of systems and the page of each."""
    ids = sorted(catalog.library.systems.keys() | catalog.by_system.keys())
    names = {id_: system_name(catalog.library, id_) for id_ in ids}
    counts = {id_: len(catalog.by_system.get(id_, ())) for id_ in ids}
    body = render("systems.html", "systems/index", names=names, counts=counts)
    yield Page("systems/index", "Systems", body)
    for id_ in ids:
        yield _system_page(catalog, id_, names[id_])


def system_name(library: Library, id_: str) -> str:
    """Return the name of a system, or its id where no record names it."""
    system = library.systems.get(id_)
    return str(system.name) if system else capitalized(id_)


def _system_page(catalog: TreeCatalog, id_: str, name: str) -> Page:
    path = addresses.system_path(id_)
    trees = catalog.by_system.get(id_, ())
    body = render(
        "system.html",
        path,
        trees=trees,
        lamps=_lamps(catalog.library, trees),
        codes=sorted({code for tree in trees for code in tree.symptom.codes}),
        articles=_articles(catalog.library, trees),
    )
    return Page(path, name, body, summary=f"Decision trees: {name}")


def _lamps(library: Library, trees: tuple[TreeSummary, ...]) -> list[tuple[str, str]]:
    ids = sorted({str(lamp) for tree in trees for lamp in tree.symptom.lamps})
    return [(id_, str(library.lamps[id_].name)) for id_ in ids if id_ in library.lamps]


def _articles(library: Library, trees: tuple[TreeSummary, ...]) -> list[tuple[str, str]]:
    ids = sorted({id_ for tree in trees for id_ in tree.how_tos} & library.how_tos.keys())
    return [(id_, str(library.how_tos[id_].title)) for id_ in ids]
