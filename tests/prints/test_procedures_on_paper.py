"""Procedures on paper: a wall sheet of their own, and once on the bench sheet of a tree."""

from pathlib import Path

import pytest
from pypdf import PdfReader

from builder.chart.flow import flow_of
from builder.check.filled_tree import tree_of
from builder.check.unchecked_library import read_library
from builder.model.library import Library
from builder.prints.bench import bench_sheet
from builder.prints.print_jobs import tree_ids
from builder.prints.sheets import PrintRequest
from builder.prints.wall import wall_chart

SAMPLES = Path(__file__).parents[1] / "samples"


@pytest.fixture(scope="module")
def library() -> Library:
    """Read the samples, whose trees run procedures."""
    return read_library(SAMPLES)[0]


def words_on(pdf: bytes, tmp_path: Path) -> str:
    """Return the text of a PDF."""
    (tmp_path / "sheet.pdf").write_bytes(pdf)
    pages = PdfReader(tmp_path / "sheet.pdf").pages
    return " ".join(" ".join(page.extract_text() for page in pages).split())


def test_a_procedure_has_a_wall_sheet(library: Library, tmp_path: Path) -> None:
    """With what it returns, who runs it, and its ends."""
    tree = tree_of(SAMPLES, library, "procedures/power-and-ground")
    words = words_on(wall_chart(tree, library), tmp_path)
    for text in ("Returns: good, bad power", "Run by: Brake pedal soft", "Never on: airbag module",
                 "Return: bad ground"):  # fmt: skip
        assert text in words


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


def test_a_bench_sheet_has_each_procedure_once(library: Library, tmp_path: Path) -> None:
    """Also the one that runs inside another; never one that the tree doesn't run."""
    words = words_on(bench_sheet(tree_of(SAMPLES, library, "charging/lamp-on"), library), tmp_path)
    for name in ("battery proof", "alternator control", "wire test"):
        assert words.count(f"Procedure {name}:") == 1, name
    assert "Procedure bleed brakes:" not in words


def test_a_step_that_runs_a_procedure_is_a_predefined_process(library: Library) -> None:
    """ISO 5807 (from memory): a rectangle with double sides; its hazards are in its bar."""
    node = flow_of(tree_of(SAMPLES, library, "brakes/soft-pedal"), library).nodes["abs-battery"]
    assert node.kind == "run"
    assert "battery" in " ".join(node.hazards).lower()
