"""Checks with many results split for large text."""

import pytest
from flows import in_a_row

from builder.chart.flow import flow_of
from builder.chart.layout import more_sheets
from builder.chart.spacing import EDGE
from builder.chart.split_checks import OTHER_RESULTS, split_checks
from builder.chart.text_fit import Room
from builder.model.tree import Tree


def test_the_parts_have_the_number_of_the_check() -> None:
    """A reader sees that it is still the same check, without its words again."""
    blocks = split_checks(in_a_row(6), 2).sections[0].blocks
    nodes = split_checks(in_a_row(6), 2).nodes
    assert [len(block.sides) for block in blocks] == [2, 2, 1, 0]
    assert [nodes[block.step].number for block in blocks[:3]] == ["1", "1", "1"]
    assert nodes[blocks[1].step].text == "goes on"


def test_every_result_is_still_there_once() -> None:
    """Parting moves results, it loses none and repeats none."""
    flow = split_checks(in_a_row(6), 2)
    said = [
        flow.edges[block.step][lead].label
        for block in flow.sections[0].blocks
        for lead in [*(side.edge_index for side in block.sides), block.down]
        if lead is not None
    ]
    assert sorted(label for label in said if label != OTHER_RESULTS) == [
        f"result check 0 fix {number}" for number in range(6)
    ]


def test_a_check_with_few_results_is_left_alone() -> None:
    """Nothing is split that need not be."""
    assert split_checks(in_a_row(3), 3) == in_a_row(3)


@pytest.mark.parametrize(
    ("fixes", "width", "height", "text", "sheets", "parts"),
    [
        # in parts of three results it takes two sheets, whole it would take three
        (8, 770, 250, 16, 2, 3),
        # in parts of two results it would take four sheets
        (8, 670, 240, 20, 6, 3),
        # in parts it takes as many sheets as whole
        (5, 523, 300, 14, 2, 1),
        # whole, and in parts of two or three results, it fits no sheet
        (5, 300, 200, 20, 14, 5),
    ],
)
def test_a_check_is_split_for_fewer_sheets_or_to_fit(
    fixes: int, width: int, height: int, text: int, sheets: int, parts: int
) -> None:
    """To save sheets it keeps three results beside a box; to fit at all it keeps what it can."""
    flow = in_a_row(fixes, 1, 1, 1, 1, 1, 1, 1, 2)
    charts = more_sheets(flow, [Room(width, height, height)], text).charts
    boxes = [box for chart in charts for box in chart.boxes]
    assert len(charts) == sheets
    assert sum(box.number == "1" and box.kind == "check" for box in boxes) == parts
    assert charts[0].text_size >= text


@pytest.mark.parametrize(
    ("width", "height", "text", "together"), [(600, 170, 9, True), (400, 110, 11, False)]
)
def test_a_head_stands_alone_only_where_nothing_else_fits(
    width: int, height: int, text: int, together: bool, small: Tree
) -> None:
    """Start and the first action keep with their check, though the text would be larger apart."""
    first = more_sheets(flow_of(small), [Room(width, height, height)], text).charts[0]
    assert first.text_size >= text
    checks = [box.rect.x for box in first.boxes if box.kind == "check"]
    assert (checks[:1] == [EDGE]) == together
