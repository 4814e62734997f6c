"""The pages of procedures: what they take and return, their steps, and who runs them."""

from pathlib import Path

import pytest

from builder.check.filled_tree import tree_of
from builder.check.unchecked_library import read_library
from builder.model.library import Library
from builder.pages.analysis import analyze_tree
from builder.pages.page import Page, TreePrint
from builder.pages.procedures import procedure_page, procedures_page
from builder.pages.tree import tree_page
from builder.pages.tree_catalog import catalog_trees

SAMPLES = Path(__file__).parents[1] / "samples"


@pytest.fixture(scope="module")
def library() -> Library:
    """Read the samples, whose trees run procedures."""
    return read_library(SAMPLES)[0]


def page_of(library: Library, name: str) -> Page:
    """Write the page of a procedure."""
    procedure = library.procedures[name]
    analysis = analyze_tree(tree_of(SAMPLES, library, procedure.tree.id), library)
    return procedure_page(procedure, library, analysis, [TreePrint("Wall chart", "")])


def test_a_page_says_what_it_takes_returns_and_who_runs_it(library: Library) -> None:
    """All that a tree's author needs to know before writing `by`."""
    page = page_of(library, "power-and-ground")
    assert page.path == "procedures/power-and-ground"
    for text in ("part: a part; load: a current", "good; bad power; fuse blown; bad ground",
                 "airbag module", 'href="../trees/brakes/soft-pedal.html"',
                 "prints/procedures/power-and-ground.pdf", "return “bad ground”",
                 'id="step-switched"', "Return: good"):  # fmt: skip
        assert text in page.body, text


def test_parts_that_come_at_the_vehicle_are_named_plainly(library: Library) -> None:
    """No `<part>` is left over, and no article stands twice."""
    body = page_of(library, "power-and-ground").body
    assert "part unplugged" in body
    assert "power pin of the part" in body
    assert "load hooked up" in body
    assert "&lt;" not in body
    assert "the The" not in body


def test_a_procedure_inside_another_is_linked_both_ways(library: Library) -> None:
    """The test of a wire belongs to the test of the alternator's command."""
    assert 'href="../procedures/wire-test.html"' in page_of(library, "alternator-control").body
    assert 'href="../procedures/alternator-control.html"' in page_of(library, "wire-test").body


def test_the_list_has_every_procedure(library: Library) -> None:
    """Each with the words that it returns."""
    page = procedures_page(catalog_trees(library))
    assert library.procedures
    for name, procedure in library.procedures.items():
        assert f"procedures/{name}.html" in page.body
        assert str(procedure.tree.title) in page.body


def test_a_tree_lists_hazards_and_tools_of_its_procedures(library: Library) -> None:
    """Battery gas and the load lamp come up inside; the tech gets ready at the start."""
    tree = tree_of(SAMPLES, library, "brakes/soft-pedal")
    page = tree_page(tree, library, analyze_tree(tree, library))
    assert str(library.hazards["battery-gas"].hazard) in page.body.split('id="steps"')[0]
    assert str(library.tools["load-lamp"].name) in page.body
    assert 'href="../../procedures/battery-proof.html"' in page.body
    assert "procedure battery proof" in page.body.replace("\u00a0", " ")
