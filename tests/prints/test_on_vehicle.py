"""Sheets for one vehicle: its limits, pins, wires, fuses and torques instead of `within spec`."""

from dataclasses import replace
from functools import partial
from pathlib import Path

import pytest

from builder.check.filled_tree import tree_of
from builder.check.unchecked_library import read_library
from builder.model.library import Library, self_contained
from builder.model.text import Text
from builder.prints.print_jobs import print_trees, tree_ids
from builder.prints.sheets import PrintRequest

from .printed_words import words

SAMPLES = Path(__file__).parents[1] / "samples"


@pytest.fixture(scope="module")
def library() -> Library:
    """Read the samples."""
    return self_contained(read_library(SAMPLES)[0])


def printed(library: Library, tree: str, sheet: str, vehicle: str = "") -> tuple[str, str]:
    """Print a tree; return the name of the file and its words."""
    known = library.vehicles.get(vehicle)
    request = PrintRequest(trees=(tree,), sheet=sheet, vehicle=known)
    read = partial(tree_of, SAMPLES, library, vehicle=known)
    ((name, pdf),) = next(iter(print_trees((tree,), request, library, read)))
    return name, words(pdf)


@pytest.mark.parametrize("sheet", ["wall", "bench"])
def test_a_limit_of_the_vehicle_takes_the_place_of_within_spec(
    library: Library, sheet: str
) -> None:
    """The tech reads the meter against a number; no sheet says `within spec` where it's known."""
    _, general = printed(library, "charging/lamp-on", sheet)
    name, text = printed(library, "charging/lamp-on", sheet, "tern")
    assert "within spec" in general
    assert "within spec" not in text
    for said in ("below 13.4 V", "13.4 to 14.9 V", "above 14.9 V"):
        assert said in text
        assert said not in general
    assert name.startswith("charging/lamp-on.tern."), "the sheet for any vehicle stays"


@pytest.mark.parametrize("sheet", ["wall", "bench"])
def test_a_pin_has_its_wire_and_its_fuse(library: Library, sheet: str) -> None:
    """Connector, pin, wire color and fuse; every sheet says for which vehicle that is."""
    _, text = printed(library, "charging/lamp-on", sheet, "tern")
    assert "alternator pin 2 (sense), yellow (YE), fuse 21 (10 A, under the hood)" in text
    assert "Corvane Tern 2017 to 2022" in text


def test_a_procedure_has_the_pins_of_the_part_it_is_run_on(library: Library) -> None:
    """The step that runs it names them, connector by connector; a fix has its torque."""
    _, text = printed(library, "steering/assist-lamp-after-module-swap", "bench", "tern")
    assert "EPS module C1 pin 1 (power), red (RD) 6 mm², fuse F3 (80 A, battery fuse block)" in text
    assert "EPS module C2 pin 5 (switched power), pink/black (PK/BK), fuse 34" in text
    assert "☐ Torque steering shaft bolt to 24 lb-ft (33 N·m)" in text


def test_only_trees_that_apply_are_printed_of_all(library: Library) -> None:
    """A tree for another vehicle has other pins: `--all` and `--system` leave it out."""
    tern = library.vehicles["tern"]
    other = replace(tern, scope=replace(tern.scope, model=Text("Merlin")))
    every = tree_ids(PrintRequest(every=True), library)
    here = tree_ids(PrintRequest(every=True, vehicle=tern), library)
    there = tree_ids(PrintRequest(every=True, vehicle=other), library)
    assert here == every
    assert set(every) - set(there) == {"steering/assist-lamp-after-module-swap"}
