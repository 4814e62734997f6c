"""The first page: the search, and the ways in without typing.

In: the catalogue. Out: `Page`.
"""

from builder.model.summary import Summary
from builder.pages.catalogue import Catalogue
from builder.pages.lamps import drawing, lamp_of
from builder.pages.page import Page
from builder.pages.render import render
from builder.pages.systems import system_name


def home_page(catalogue: Catalogue) -> Page:
    """Write the first page."""
    library = catalogue.library
    recent = sorted(catalogue.trees, key=_written, reverse=True)[:5]
    body = render(
        "home.html",
        "index",
        systems=[
            (id_, system_name(library, id_), len(t)) for id_, t in catalogue.by_system.items()
        ],
        lamps=[lamp_of(library, id_) for id_ in catalogue.by_lamp],
        drawing=drawing,
        during=list(catalogue.by_during),
        recent=recent,
        count=len(catalogue.trees),
    )
    return Page("index", "What does it do?", body, scripts=("search.js",))


def _written(tree: Summary) -> tuple[str, str]:
    return (str(tree.written.date) if tree.written else "", tree.id)
