"""The home page: the search, and lists for those who'd rather not type.

In: the catalog of trees. Out: `Page`.
"""

from collections.abc import Iterator, Mapping, Sequence, Sized
from itertools import islice

from builder.model.summary import TreeSummary
from builder.model.tree import Status
from builder.pages.lamps import lamp_drawing, lamp_record
from builder.pages.page import Page
from builder.pages.render import render
from builder.pages.systems import system_name
from builder.pages.tree_catalog import TreeCatalog

HOME_SCRIPTS = (
    "dom.js", "search.js", "jobs-store.js", "walk-parts.js", "save-file.js", "jobs.js",
    "offline-data.js", "offline.js",
)  # fmt: skip


def home_page(catalog: TreeCatalog) -> Page:
    """Write the home page."""
    library = catalog.library
    recent = sorted(catalog.trees, key=_written, reverse=True)[:5]
    body = render(
        "home.html",
        "index",
        systems=[
            (id_, system_name(library, id_), len(trees)) for id_, trees in catalog.by_system.items()
        ],
        lamps=[lamp_record(library, id_) for id_ in catalog.by_lamp],
        lamp_drawing=lamp_drawing,
        occasions=list(catalog.by_occasion),
        codes=bool(catalog.by_code or library.codes),
        examples=", ".join(_examples(catalog, recent)),
        recent=recent,
        count=len(catalog.trees),
        shop=library.shop.name,
    )
    return Page("index", "What's it doing?", body, scripts=HOME_SCRIPTS)


def _examples(catalog: TreeCatalog, recent: Sequence[TreeSummary]) -> Iterator[str]:
    """Yield example queries from this shop: a complaint, a warning light, a DTC, a vehicle."""
    ready = [tree for tree in recent if tree.status is Status.READY and tree.symptom.words]
    yield from (tree.symptom.words[0] for tree in ready[:1])
    if lamp := _longest(catalog.by_lamp):
        yield lamp_record(catalog.library, lamp).name
    if code := _longest(catalog.by_code):
        yield code
    for vehicle in islice(catalog.library.vehicles.values(), 1):
        yield " ".join(map(str, (vehicle.scope.model, *(vehicle.scope.years or ())[:1])))


def _longest(lists: Mapping[str, Sized]) -> str:
    """Return the key with the longest list, the first one of equals; "" without any."""
    return max(sorted(lists), key=lambda key: len(lists[key]), default="")


def _written(tree: TreeSummary) -> tuple[str, str]:
    return (str(tree.written.date) if tree.written else "", tree.id)
