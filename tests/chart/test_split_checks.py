"""Checks with many results split for large text."""

import pytest

from builder.chart.flow import Edge, Flow, Node, nodes_reached_by_number
from builder.chart.layout import more_sheets
from builder.chart.split_checks import OTHER_RESULTS, split_checks
from builder.chart.text_fit import Room
from builder.plan.outline import OutlineEdge, StepGraph, outline


def in_a_row(*fixes: int) -> Flow:
    """Make checks that each have so many fixes, and a way on to the next."""
    checks = [f"check {at}" for at in range(len(fixes))]
    ends = {check: [f"{check} fix {at}" for at in range(count)]
            for check, count in zip(checks, fixes, strict=True)}  # fmt: skip
    nodes = {check: Node(check, "check", "Look", str(at)) for at, check in enumerate(checks, 1)}
    edges: dict[str, tuple[Edge, ...]] = {}
    for check, following in zip(checks, [*checks[1:], None], strict=True):
        targets = [*ends[check], *([following] if following else [])]
        edges[check] = tuple(Edge(check, to, f"result {to}") for to in targets)
        for fix in ends[check]:
            edges[fix] = ()
            nodes[fix] = Node(fix, "fix", fix, str(len(nodes) + 1))
    leads = {name: [OutlineEdge(edge.target) for edge in out] for name, out in edges.items()}
    bare = frozenset(name for name, out in edges.items() if not out)
    sections = outline(StepGraph(checks[0], leads, bare, frozenset(checks)))
    return Flow("in a row", nodes, edges, sections, nodes_reached_by_number(edges, sections))


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
