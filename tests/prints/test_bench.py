"""The bench sheet: every step, every place to write, in an order that can be worked through."""

import re
from io import BytesIO

import pytest
from pypdf import PdfReader

from builder.model.library import Library
from builder.model.tree import Tree
from builder.plan.numbering import numbering
from builder.prints.bench import bench_sheet


@pytest.fixture(scope="module")
def text(small: Tree, library: Library) -> str:
    """Print the small tree and read it back."""
    return words(bench_sheet(small, library, "a4"))


def words(pdf: bytes) -> str:
    """Return the text of a PDF, blanks and lines to write on as one space."""
    pages = PdfReader(BytesIO(pdf), strict=True).pages
    return " ".join(" ".join(page.extract_text() for page in pages).split())


def test_steps_come_in_the_order_of_their_numbers(text: str, small: Tree) -> None:
    """The list goes as the chart goes."""
    places = [text.index(f"{number} {prefix(small, step)}{small.steps[step].text}")
              for step, number in numbering(small).items()]  # fmt: skip
    assert places == sorted(places)


def prefix(tree: Tree, step: str) -> str:
    """Return the word before an end."""
    return {"fix": "Fix: ", "stop": "Stop: "}.get(tree.steps[step].kind, "")


@pytest.mark.parametrize(
    "place",
    [
        "Order number",
        "Vehicle number",
        "Odometer",
        "Date",
        "Name",
        "☐ below 12.2 V (battery flat) → go to 3",
        "☐ could not be done → go to 6",
        "plus: V",
        "ground: V",
        "sum = plus + ground:",
        "take the first that fits",
        "→ Tree: One module does not answer, step answers",
        "☐ Verified: both sides measured again",
        "still there: go to 7",
        "Cause: Resistance in the wire",
    ],
)
def test_there_is_a_place_for(place: str, text: str) -> None:
    """Limits beside the readings, boxes to tick, places for who, what and when."""
    assert place in text.replace("\N{NO-BREAK SPACE}", " ")


def test_the_longest_trees_can_be_printed(trees: tuple[Tree, ...], library: Library) -> None:
    """Long notes and many results break over pages; none is lost."""
    for tree in sorted(trees, key=lambda tree: len(tree.steps))[-6:]:
        found = re.sub(r"\s", "", words(bench_sheet(tree, library, "letter")))
        for step in tree.steps.values():
            assert re.sub(r"\s", "", str(step.text)) in found, (tree.id, step.id)


def test_the_same_tree_gives_the_same_bytes(small: Tree, library: Library) -> None:
    """A print changes only when its tree does."""
    assert bench_sheet(small, library) == bench_sheet(small, library)
