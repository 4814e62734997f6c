"""The layout: nothing crosses, nothing overlaps, nothing is lost, whatever is laid out."""

import re
from dataclasses import replace
from itertools import pairwise

import pytest
from faults import NONE, faults
from flows import flows
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.chart.chart import Chart
from builder.chart.columns import block_groups
from builder.chart.flow import Flow, flow_of
from builder.chart.flow_metrics import flow_metrics
from builder.chart.layout import (
    LEAST_TEXT,
    LESS_PLAIN_GAIN,
    MANY,
    SheetTask,
    best_layout,
    best_paper_use,
    one_sheet,
    page_chart,
    plainest_of_good,
    sheet_charts,
)
from builder.chart.spacing import EDGE
from builder.chart.styles import RIGHT, STYLES, UNDER
from builder.chart.text_fit import (
    Room,
    SheetLayout,
    StyledFlow,
    fewest_sheets_layout,
    fit_task,
    largest_layout,
    styled_flow,
)
from builder.model.library import Library
from builder.model.tree import Tree
from builder.wording.results import NO_BREAK

A4 = Room(523, 700, 700)
A4_LYING = Room(770, 450, 450)
A3 = Room(770, 1050, 850)


@pytest.mark.parametrize("style", ["right", "under"])
@given(flow=flows(), width=st.integers(300, 1200), height=st.integers(400, 900))
@settings(max_examples=60, deadline=None)
def test_no_line_crosses_and_nothing_overlaps(
    style: str, flow: Flow, width: int, height: int
) -> None:
    """No crossing, no box on box, no line through a box, no label on a line, no words cut off."""
    assert faults(one_sheet(flow, Room(width, height, height), style)) == NONE


@given(flow=flows(), text=st.sampled_from((12, 18, 30)))
@settings(max_examples=40, deadline=None)
def test_every_step_stands_on_a_sheet(flow: Flow, text: int) -> None:
    """However many sheets it takes, each step is drawn, and no part leaves its sheet."""
    sheets = sheet_charts(flow, [A4], text).charts
    shown = {box.number for chart in sheets for box in chart.boxes if box.kind != "connector"}
    assert shown >= {node.number for node in flow.nodes.values()}
    for chart in sheets:
        assert faults(chart) == NONE
        assert chart.width * chart.scale <= A4.width + 0.01
        assert chart.height * chart.scale <= A4.height + 0.01


@given(flow=flows(), text=st.sampled_from((12, 18, 30)))
@settings(max_examples=30, deadline=None)
def test_the_search_misses_nothing(flow: Flow, text: int) -> None:
    """It leaves out what cannot win, and finds what a search of every way in full finds."""
    styles = [styled_flow(flow_metrics(flow, sheets=True), style) for style in STYLES]
    rooms = [A4, A4_LYING]
    in_full = [plainest_of_good([in_room(one, room, text) for one in styles]) for room in rooms]
    assert best_layout(SheetTask(rooms, text, MANY), styles) == best_paper_use(in_full)


def in_room(one: StyledFlow, room: Room, text: float) -> SheetLayout | None:
    """Search one way to draw and to use the paper, as if it were the only one."""
    task = fit_task(one, room)
    few = fewest_sheets_layout(task, text, MANY)
    if few is None:
        return None
    begun = largest_layout(replace(task, begins=True), few.sheets, text)
    return begun or largest_layout(task, few.sheets, text) or few


@given(flow=flows())
@settings(max_examples=40, deadline=None)
def test_a_connector_leads_to_a_step_that_is_drawn(flow: Flow) -> None:
    """Whoever follows a number finds it."""
    chart = one_sheet(flow, A4)
    drawn = {box.number for box in chart.boxes if box.kind != "connector"}
    assert {box.number for box in chart.boxes if box.kind == "connector"} <= drawn


def test_the_charts_of_the_shop_are_sound(trees: tuple[Tree, ...], library: Library) -> None:
    """Every tree of the tests' shop, in the page and on paper, is free of faults."""
    for tree in trees:
        assert faults(page_chart(tree, library)) == NONE, tree.id
        for chart in sheet_charts(flow_of(tree, library), [A4, A3]).charts:
            assert faults(chart) == NONE, tree.id


def test_a_line_between_sections_is_as_wide_as_its_column(
    trees: tuple[Tree, ...], library: Library
) -> None:
    """In the page there is one column, and the border around it."""
    charts = [page_chart(tree, library) for tree in trees]
    rules = [(line, chart) for chart in charts for line in chart.lines if line.rule]
    assert rules
    for line, chart in rules:
        (left, _), (right, _) = line.points
        assert (left, right) == (EDGE, chart.width - EDGE)


def test_text_on_paper_is_never_small(trees: tuple[Tree, ...], library: Library) -> None:
    """Sheets are added before the text falls below the least that reads well on a wall."""
    for tree in trees:
        for chart in sheet_charts(flow_of(tree, library), [A4]).charts:
            assert chart.text_size >= LEAST_TEXT
            assert chart.small_size >= 10


def test_larger_text_takes_more_sheets(trees: tuple[Tree, ...], library: Library) -> None:
    """The text size that was asked for is kept, whatever it takes."""
    flow = flow_of(max(trees, key=lambda tree: len(tree.steps)), library)
    counts = []
    for text in (12, 16, 24):
        charts = sheet_charts(flow, [A4], text).charts
        assert charts[0].text_size >= text
        counts.append(len(charts))
    assert counts == sorted(counts)
    assert counts[0] < counts[-1]


def test_a_size_that_no_sheet_holds_gives_the_largest_that_does(small: Tree) -> None:
    """The charts then tell a smaller size than was asked for; a bit more finds no larger one."""
    charts = sheet_charts(flow_of(small), [A4], 400).charts
    size = charts[0].text_size
    assert 12 < size < 400
    assert all(faults(chart) == NONE for chart in charts)
    rooms = [A4, Room(250, 300, 300)]
    assert sheet_charts(flow_of(small), rooms, size * 1.02).charts[0].text_size == size


def test_the_plainer_style_is_kept_unless_the_other_is_clearly_larger(
    trees: tuple[Tree, ...], library: Library
) -> None:
    """Results to the right, unless results under the check give text that is clearly larger."""
    for tree in trees:
        flow = flow_of(tree, library)
        right, under, chosen = (one_sheet(flow, A3, style) for style in ("right", "under", ""))
        larger = under.text_size > right.text_size * (
            LESS_PLAIN_GAIN if right.text_size >= LEAST_TEXT else 1
        )
        assert chosen.text_size == (under if larger else right).text_size


def test_no_larger_text_would_fit(small: Tree) -> None:
    """What the search finds is within two in a hundred of the largest for its columns."""
    for style in (RIGHT, UNDER):
        wanted = fit_task(styled_flow(flow_metrics(flow_of(small)), style), A4)
        best = largest_layout(wanted, 1)
        assert best
        assert largest_layout(wanted, 1, best.text * 1.02) is None


def test_no_lone_head_and_no_lone_fix(trees: tuple[Tree, ...], library: Library) -> None:
    """A column never ends with a bare head of a section, nor begins with a bare end.

    Nothing else is kept together: a column may end before any other block.
    """
    for tree in trees:
        for blocks, first, last in block_groups(flow_of(tree, library).sections):
            assert not (first and not last and not any(block.sides for block in blocks)), tree.id
            bare = [one.down is None and not any(side.chain for side in one.sides)
                    for one in blocks]  # fmt: skip
            assert not (bare[0] and not first), tree.id
            for at in range(1, len(blocks)):
                head = first and not any(block.sides for block in blocks[:at])
                assert bare[at] or head, tree.id


def test_boxes_come_in_the_order_of_their_numbers(
    trees: tuple[Tree, ...], library: Library
) -> None:
    """Tab by tab, or read aloud, the chart goes as its numbers go."""
    for tree in trees:
        seen = first_numbers(page_chart(tree, library))
        assert all(one < two for one, two in pairwise(seen)), tree.id


def first_numbers(chart: Chart) -> list[int]:
    """Return the number of each box when it is met for the first time."""
    numbers = [box.number for box in chart.boxes if box.number and box.kind != "connector"]
    return [int(number) for number in dict.fromkeys(numbers)]


def test_the_same_tree_gives_the_same_chart(small: Tree, library: Library) -> None:
    """A chart changes only when its tree does."""
    assert page_chart(small, library) == page_chart(small, library)


def test_a_jump_to_another_sheet_names_it(trees: tuple[Tree, ...], library: Library) -> None:
    """ "still there: go to 21" says on which sheet 21 stands, unless it is this one."""
    named = 0
    for tree in trees:
        charts = sheet_charts(flow_of(tree, library), [A4]).charts
        sheets: dict[str, int] = {}
        for sheet, chart in enumerate(charts, 1):
            for box in chart.boxes:
                if box.kind not in ("connector", "decision"):
                    sheets.setdefault(box.number, sheet)
        for sheet, chart in enumerate(charts, 1):
            for box in (box for box in chart.boxes if box.kind in ("fix", "action", "check")):
                words = " ".join(run.text for run in box.runs).replace(NO_BREAK, " ")
                for to, said in re.findall(r"go to (\d+)(?: sheet (\d+))?", words):
                    other = "" if sheets[to] == sheet else str(sheets[to])
                    assert said == other, (tree.id, box.id)
                    named += bool(said)
    assert named


def test_a_number_is_marked_where_a_connector_or_words_lead_to_it(
    trees: tuple[Tree, ...], library: Library
) -> None:
    """Its dark ground is what the eye looks for after "go to 21"; a number like any other has none.

    A step at the head of a column is led to by the connector at the foot of the one before.
    """
    found, bare = 0, 0
    for tree in trees:
        charts = sheet_charts(flow_of(tree, library), [A4, Room(770, 300, 300)], 16).charts
        boxes = [box for chart in charts for box in chart.boxes if box.kind != "decision"]
        words = [" ".join(run.text for run in box.runs).replace(NO_BREAK, " ") for box in boxes]
        led_to = {box.number for box in boxes if box.kind == "connector"}
        for said in words:
            led_to.update(re.findall(r"go to (\d+)", said))
        marked = {box.number for box in boxes if box.arrival}
        steps = {box.number for box in boxes if box.kind in ("check", "action")}
        assert marked == led_to & steps, tree.id
        found += len(marked)
        bare += len(steps - marked)
    assert found
    assert bare
