"""Procedures on paper: a wall sheet of their own, and once on the bench sheet of a tree."""

from pathlib import Path

import pytest

from builder.chart.flow import flow_of
from builder.check.filled_tree import tree_of
from builder.check.unchecked_library import read_library
from builder.model.library import Library
from builder.prints.bench import bench_sheet
from builder.prints.print_jobs import tree_ids
from builder.prints.sheets import PrintRequest
from builder.prints.wall import wall_chart
from builder.wording.vehicle_words import condition_texts

from .printed_words import words

SAMPLES = Path(__file__).parents[1] / "samples"


@pytest.fixture(scope="module")
def library() -> Library:
    """Read the samples, whose trees run procedures."""
    return read_library(SAMPLES)[0]


def test_a_procedure_has_a_wall_sheet(library: Library) -> None:
    """With what it returns, who runs it, and its ends."""
    tree = tree_of(SAMPLES, library, "procedures/power-and-ground")
    text = words(wall_chart(tree, library))
    for part in ("Returns: good, bad power", "Run by: Brake pedal soft", "Never on: airbag module",
                 "Return: bad ground"):  # fmt: skip
        assert part in text


def test_all_means_procedures_too(library: Library) -> None:
    """The wall has the sheets that the trees send a tech to."""
    ids = tree_ids(PrintRequest(every=True), library)
    assert {f"procedures/{name}" for name in library.procedures} <= set(ids)
    assert tree_ids(PrintRequest(trees=("procedures/road-test",)), library)


def test_the_sheets_of_its_procedures_can_come_with_a_tree(library: Library) -> None:
    """Each once, after the trees that run them."""
    tree = "brakes/soft-pedal"
    ids = tree_ids(PrintRequest(trees=(tree,), procedures=True), library)
    run = library.listings[tree].procedures
    assert run
    assert list(ids) == [tree, *sorted(f"procedures/{name}" for name in run)]


def test_a_bench_sheet_has_each_procedure_once(library: Library) -> None:
    """Also the one that runs inside another; never one that the tree doesn't run."""
    text = words(bench_sheet(tree_of(SAMPLES, library, "charging/lamp-on"), library))
    for name in ("battery proof", "alternator control", "wire test"):
        assert text.count(f"Procedure {name}:") == 1, name
    assert "Procedure bleed brakes:" not in text


def test_a_step_that_runs_a_procedure_is_a_predefined_process(library: Library) -> None:
    """ISO 5807 (from memory): a rectangle with double sides; its hazards are in its bar."""
    node = flow_of(tree_of(SAMPLES, library, "brakes/soft-pedal"), library).nodes["abs-battery"]
    assert node.kind == "run"
    assert "battery" in " ".join(node.hazards).lower()


def test_the_box_of_a_procedure_has_the_state_in_which_it_begins(library: Library) -> None:
    """Paper can't know the way: the state of its first step, with the part that it is run on."""
    nodes = flow_of(tree_of(SAMPLES, library, "brakes/soft-pedal"), library).nodes
    first = library.procedures["battery-proof"].tree.start
    assert nodes["abs-battery"].when == condition_texts(first, library)
    handed = ("key on, engine off", "ABS module unplugged", "9\u00a0A load hooked up")
    assert nodes["abs-feed"].when == handed
