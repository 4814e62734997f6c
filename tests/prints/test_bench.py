"""The bench sheet: every step, every place to write, in an order that can be worked through."""

import re
from dataclasses import replace
from io import BytesIO
from itertools import pairwise

import pytest
from pypdf import PdfReader

from builder.chart.flow import flow_of
from builder.model.ends import Fix
from builder.model.library import Library
from builder.model.text import Text
from builder.model.tree import Tree
from builder.plan.numbering import numbering
from builder.prints.bench import bench_sheet
from builder.prints.bench_order import USUAL, bench_parts, usual_way
from builder.wording.placeholders import in_plain_words
from builder.wording.sentences import verification_text

from .printed_words import words


@pytest.fixture(scope="module")
def text(small: Tree, library: Library) -> str:
    """Print the small tree and read it back."""
    return words(bench_sheet(small, library, "a4"))


def test_the_way_most_jobs_take_comes_first(text: str, small: Tree, library: Library) -> None:
    """Then what branches off it, each part in the order of its numbers; every step once."""
    small = in_plain_words(small)
    numbers = numbering(small)
    parts = list(bench_parts(flow_of(small, library)))
    assert parts[0].title == USUAL
    for part in parts[1:]:
        assert list(part.steps) == sorted(part.steps, key=lambda step: numbers[step])
    listed = [step for part in parts for step in part.steps]
    assert sorted(listed) == sorted(small.steps)
    places = [text.index(f"{numbers[step]} {prefix(small, step)}{small.steps[step].text}")
              for step in listed]  # fmt: skip
    assert places == sorted(places)


def test_the_usual_way_leads_from_the_start_to_an_end(
    trees: tuple[Tree, ...], library: Library
) -> None:
    """One way that can be worked through: each step leads to the next."""
    longest = 0
    for tree in trees:
        flow = flow_of(tree, library)
        way = list(usual_way(flow))
        longest = max(longest, len(way))
        assert way[0] == str(tree.start.id)
        for step, after in pairwise(way):
            assert after in {edge.target for edge in flow.edges[step]}, (tree.id, step)
    assert longest > 2


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
        "☐ can't test → go to 6",
        "plus: V",
        "ground: V",
        "sum = plus + ground:",
        "take the first that fits",
        "→ Tree: One module is silent, step answers",
        "☐ Verified: both sides measured again",
        "☐ Verified: both sides measured again ☐ still there → go to 7",
        "→ back to 2",
        "☐ the second time → go to 4",
        "Cause: Resistance in the wire",
    ],
)
def test_there_is_a_place_for(place: str, text: str) -> None:
    """Limits beside the readings, boxes to tick, places for who, what and when."""
    assert place in text


def test_a_step_done_for_each_of_a_list_has_the_list(
    trees: tuple[Tree, ...], library: Library
) -> None:
    """Every item of the tree's own list, or of the list of every vehicle, has a box to tick."""
    by_id = {tree.id: tree for tree in trees}
    leak = by_id["fuel/smell"]
    sheet = words(bench_sheet(leak, library, "a4"))
    assert all(f"☐ {place}" in sheet for place in leak.lists["places"])
    sheet = words(bench_sheet(by_id["battery/flat-after-standing"], library, "a4"))
    assert "For each circuit, Brindal Fell: ☐ cab lamps" in sheet


def test_the_longest_trees_can_be_printed(trees: tuple[Tree, ...], library: Library) -> None:
    """Long notes and many results break over pages; none is lost."""
    for tree in sorted(trees, key=lambda tree: len(tree.steps))[-6:]:
        found = re.sub(r"\s", "", words(bench_sheet(tree, library, "letter")))
        for step in in_plain_words(tree).steps.values():
            assert re.sub(r"\s", "", str(step.text)) in found, (tree.id, step.id)


def test_no_step_is_cut_by_the_end_of_a_page(trees: tuple[Tree, ...], library: Library) -> None:
    """The boxes to tick stand on the page of their step, so that one need not turn back."""
    fixes = 0
    for tree in sorted(trees, key=lambda tree: len(tree.steps))[-6:]:
        pages = PdfReader(BytesIO(bench_sheet(tree, library, "a4"))).pages
        texts = [" ".join(page.extract_text().split()) for page in pages]
        said = in_plain_words(tree)
        for step, number in numbering(tree).items():
            body = said.steps[step].body
            if isinstance(body, Fix):
                (page,) = [text for text in texts if re.search(f" {number} (⚠|NOTICE|Fix: )", text)]
                assert f"Cause: {body.cause}" in page, (tree.id, number)
                assert f"Verified: {verification_text(body.verify[-1])}" in page, (
                    tree.id,
                    number,
                )
                fixes += 1
    assert fixes


def test_a_step_longer_than_a_page_is_printed(small: Tree, library: Library) -> None:
    """A note without end breaks over pages; nothing stops the print."""
    step = replace(small.steps["rest"], note=Text("It is a long story. " * 600, small.at))
    text = words(bench_sheet(replace(small, steps={**small.steps, "rest": step}), library, "a4"))
    assert text.count("story.") == 600


def test_the_same_tree_gives_the_same_bytes(small: Tree, library: Library) -> None:
    """A print changes only when its tree does."""
    assert bench_sheet(small, library) == bench_sheet(small, library)
