"""The list of pages for other programs."""

import json
from pathlib import Path

from builder.check.unchecked_library import read_library
from builder.site.page_index import page_index

SAMPLES, SHOP = (Path(__file__).parents[1] / name for name in ("samples", "shop"))


def test_it_names_every_tree_procedure_and_vehicle_once() -> None:
    """With the address of its page, and of its wall chart where it has one."""
    library, _ = read_library(SAMPLES)
    entries = json.loads(page_index(library, prints=True))
    assert len(entries) == len(library.trees) + len(library.procedures) + len(library.vehicles)
    assert {"id": "battery-proof", "kind": "procedure", "page": "procedures/battery-proof.html",
            "print": "prints/procedures/battery-proof.pdf"} in entries  # fmt: skip
    assert {"id": "tern", "kind": "vehicle", "page": "vehicles/tern.html", "print": None} in entries
    assert all(set(entry) == {"id", "kind", "page", "print"} for entry in entries)


def test_a_retired_tree_has_a_page_and_no_print() -> None:
    """Its address still works."""
    entries = json.loads(page_index(read_library(SHOP)[0], prints=True))
    retired = [entry for entry in entries if entry["kind"] == "retired"]
    assert retired
    assert all(entry["print"] is None for entry in retired)


def test_without_prints_nothing_has_one() -> None:
    """A preview makes none."""
    entries = json.loads(page_index(read_library(SAMPLES)[0], prints=False))
    assert entries
    assert all(entry["print"] is None for entry in entries)
