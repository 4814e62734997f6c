"""The first page: the search, and the ways in without typing.

In: the catalogue. Out: `Page`.
"""

from collections.abc import Iterator, Mapping, Sequence, Sized
from itertools import islice

from builder.model.summary import Summary
from builder.model.tree import Status
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
        codes=bool(catalogue.by_code or library.codes),
        examples=", ".join(_examples(catalogue, recent)),
        recent=recent,
        count=len(catalogue.trees),
    )
    return Page("index", "What does it do?", body, scripts=("dom.js", "search.js"))


def _examples(catalogue: Catalogue, recent: Sequence[Summary]) -> Iterator[str]:
    """Yield what can be typed, as this shop has it: a complaint, a lamp, a code, a vehicle."""
    ready = [tree for tree in recent if tree.status is Status.READY and tree.symptom.words]
    yield from (tree.symptom.words[0] for tree in ready[:1])
    if lamp := _most(catalogue.by_lamp):
        yield lamp_of(catalogue.library, lamp).name
    if code := _most(catalogue.by_code):
        yield code
    for vehicle in islice(catalogue.library.vehicles.values(), 1):
        yield " ".join(map(str, (vehicle.scope.model, *(vehicle.scope.years or ())[:1])))


def _most(lists: Mapping[str, Sized]) -> str:
    """Return the name that most trees have; the first of equals, "" of none."""
    return max(sorted(lists), key=lambda name: len(lists[name]), default="")


def _written(tree: Summary) -> tuple[str, str]:
    return (str(tree.written.date) if tree.written else "", tree.id)
