"""A list of the site's pages for other programs: `index.json` at its root.

In: the library, whether there are prints. Out: its text,
`[{"id", "kind": "tree" | "retired" | "procedure" | "vehicle", "page", "print"}]`: addresses from
the root of the site, `print` the wall chart, or null where there is none.
"""

import json
from collections.abc import Iterator

from builder.model.library import Library
from builder.model.tree import Status
from builder.pages import addresses

INDEX_FILE = "index.json"
PageEntry = dict[str, str | None]


def page_index(library: Library, prints: bool) -> str:
    """Return the list of pages as JSON."""
    return json.dumps([*_entries(library, prints)], ensure_ascii=False, indent=1) + "\n"


def _entries(library: Library, prints: bool) -> Iterator[PageEntry]:
    for id_, listing in library.listings.items():
        is_retired = listing.status is Status.RETIRED
        sheet = addresses.print_path(id_, "") if prints and not is_retired else None
        kind = "retired" if is_retired else "tree"
        yield _entry(id_, kind, addresses.tree_path(id_), sheet)
    for name, procedure in library.procedures.items():
        sheet = addresses.print_path(procedure.tree.id, "") if prints else None
        yield _entry(name, "procedure", addresses.procedure_path(name), sheet)
    for id_ in library.vehicles:
        yield _entry(id_, "vehicle", addresses.vehicle_path(id_), None)


def _entry(id_: str, kind: str, path: str, sheet: str | None) -> PageEntry:
    return {"id": id_, "kind": kind, "page": f"{path}.html", "print": sheet}
