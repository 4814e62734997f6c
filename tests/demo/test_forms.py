"""Every tree of the demo in the forms that it is given back in."""

import json
from io import BytesIO

from faults import NONE, faults
from pypdf import PdfReader

from builder.chart.layout import page_chart
from builder.model.ends import Fix
from builder.model.library import Library
from builder.model.tree import Status, Tree
from builder.plan.minutes import tree_minutes
from builder.prints.customer import customer_sheet
from builder.walk.table import walk_table


def test_every_chart_is_sound(trees: tuple[Tree, ...], library: Library) -> None:
    """Nothing crosses and nothing overlaps in the chart of any page."""
    for tree in trees:
        assert faults(page_chart(tree, library)) == NONE, tree.id


def test_every_walk_is_light(trees: tuple[Tree, ...], library: Library) -> None:
    """A page with its walk table opens as fast as one without."""
    for tree in trees:
        text = json.dumps(walk_table(tree, library), separators=(",", ":"))
        assert len(text) < 12_000, tree.id


def test_some_readings_are_worked_out(trees: tuple[Tree, ...], library: Library) -> None:
    """A tree shows how one reading follows from others."""
    tables = [walk_table(tree, library) for tree in trees]
    assert sum(any(row["computed"] for row in one["steps"].values()) for one in tables) >= 1


def test_the_minutes_of_every_tree_are_whole(trees: tuple[Tree, ...]) -> None:
    """No tree is so tangled that its longest walk is counted without all repeats."""
    for tree in (tree for tree in trees if tree.status is not Status.RETIRED):
        found = tree_minutes(tree)
        assert found.includes_repeats, tree.id
        assert 0 < found.shortest <= found.expected <= found.longest, tree.id


def test_every_customer_s_sheet_is_short(trees: tuple[Tree, ...], library: Library) -> None:
    """The fix with the most to say of each tree is told on one page or two."""
    for tree in trees:
        fixes = [step for step in tree.steps.values() if isinstance(step.body, Fix)]
        if fixes:
            longest = max(fixes, key=lambda step: len(str(step.body)))
            pdf = customer_sheet(tree, str(longest.id), library)
            assert len(PdfReader(BytesIO(pdf)).pages) <= 2, tree.id
