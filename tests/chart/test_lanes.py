"""Blocks as they are drawn: what was measured is what is drawn, and no line hangs in the air."""

from collections.abc import Iterator
from itertools import pairwise

import pytest
from flows import flows
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.chart.block_size import BlockSize
from builder.chart.chart import Box, Label, Part, Polyline, Rect
from builder.chart.flow import Edge, Flow, Node
from builder.chart.flow_metrics import flow_metrics
from builder.chart.layout import one_sheet
from builder.chart.parts import Pen
from builder.chart.spacing import ARROW, INDENT, LEAST_GAP, ROW_GAP, TRUNK
from builder.chart.styles import STYLES, Style
from builder.chart.svg import HEAD
from builder.chart.text_fit import Room
from builder.plan.outline import ChainStep, OutlineBlock, OutlineSection, SideBranch

TOUCH = 0.01
Point = tuple[float, float]
WIDER = st.integers(0, 200)
BOTH = pytest.mark.parametrize("style", STYLES, ids=lambda style: style.name)


def drawn(
    flow: Flow, style: Style, wider: int, cut: bool = False
) -> Iterator[tuple[OutlineBlock, BlockSize, float, list[Part]]]:
    """Yield every block, its size, the width of its column and its parts, from the top left."""
    metrics = flow_metrics(flow)
    width = style.least(metrics) + wider
    for section in flow.sections:
        for block in section.blocks:
            made = style.size(metrics, block, width)
            parts = list(style.draw(Pen(metrics), block, made, Rect(0, 0, width, 0), cut))
            yield block, made, width, parts


def boxes_of(parts: list[Part]) -> list[Box]:
    """Return the boxes and connectors, without the diamond."""
    return [part for part in parts if isinstance(part, Box) and part.kind != "decision"]


def lines_of(parts: list[Part]) -> list[Polyline]:
    """Return the lines."""
    return [part for part in parts if isinstance(part, Polyline)]


def lowest(parts: list[Part]) -> float:
    """Return the lower edge of the words and boxes."""
    labels = [part for part in parts if isinstance(part, Label)]
    return max(part.rect.bottom for part in [*boxes_of(parts), *labels])


@BOTH
@given(flow=flows(), wider=WIDER)
@settings(max_examples=40)
def test_a_block_is_as_high_as_it_was_measured(style: Style, flow: Flow, wider: int) -> None:
    """At the foot of a column: its lowest words or box end where it does, less a row's gap."""
    for block, made, _, parts in drawn(flow, style, wider, cut=True):
        assert -TOUCH <= made.body + made.cut - lowest(parts) <= ROW_GAP + TOUCH
        assert block.down is not None or made.cut == made.tail == 0


@BOTH
@given(flow=flows(), wider=WIDER)
@settings(max_examples=40)
def test_the_way_down_ends_at_the_next_box(style: Style, flow: Flow, wider: int) -> None:
    """However high the results beside it are; and there is room for an arrow."""
    for block, made, _, parts in drawn(flow, style, wider):
        if block.down is None:
            continue
        (down,) = [line for line in lines_of(parts) if line.points[-1][0] == TRUNK]
        assert down.points[-1][1] == pytest.approx(made.body + made.tail)
        assert made.tail >= LEAST_GAP
        assert down.points[-1][1] - down.points[0][1] >= HEAD
        assert lowest(parts) <= made.body + made.tail


@BOTH
@given(flow=flows(), wider=WIDER)
@settings(max_examples=40)
def test_the_boxes_of_a_lane_stand_between_the_same_edges(
    style: Style, flow: Flow, wider: int
) -> None:
    """From an indent beside the line that all results leave from, to the edge of the column."""
    for block, _, width, parts in drawn(flow, style, wider):
        own, *beside = boxes_of(parts)
        labels = [part for part in parts if isinstance(part, Label)]
        assert own.id == block.step
        lane = {
            line.points[-2][0]
            for line in lines_of(parts)
            if line.arrow
            and line.points[-1][0] != line.points[0][0]
            and not any(begins_at(label, line) for label in labels)
        }
        for box in beside:
            assert box.rect.right <= width + TOUCH
            if box.kind != "connector":
                (line,) = lane
                assert box.rect.x == pytest.approx(line + INDENT)
                assert box.rect.right == pytest.approx(width)


@given(flow=flows(), width=st.integers(300, 1200), style=st.sampled_from(STYLES))
@settings(max_examples=60)
def test_no_line_hangs_in_the_air(flow: Flow, width: int, style: Style) -> None:
    """Each begins at a symbol or at another line, and its head touches a symbol."""
    chart = one_sheet(flow, Room(width, 700, 700), style.name)
    symbols = [box.rect for box in chart.boxes]
    for line in (line for line in chart.lines if line.arrow):
        others = [pair for other in chart.lines if other is not line
                  for pair in pairwise(other.points)]  # fmt: skip
        first, last = line.points[0], line.points[-1]
        assert any(touches(place, last) for place in symbols)
        assert (
            any(touches(place, first) for place in symbols)
            or any(lies_on(first, *pair) for pair in others)
            or any(begins_at(label, line) for label in chart.labels)
        )
        (x1, y1), (x2, y2) = line.points[-2:]
        assert abs(x2 - x1) + abs(y2 - y1) >= (ARROW if y1 == y2 else HEAD) - TOUCH


def begins_at(label: Label, line: Polyline) -> bool:
    """Whether a line goes on behind words that stand on it."""
    x, y = line.points[0]
    return x == pytest.approx(label.rect.right + 1) and label.rect.y < y < label.rect.bottom


def touches(place: Rect, point: Point) -> bool:
    """Whether a point lies on the edge of a place."""
    return lies_in(place, point, TOUCH) and not lies_in(place, point, -TOUCH)


def lies_in(place: Rect, point: Point, rim: float) -> bool:
    """Whether a point lies in a place made larger by a rim."""
    return (place.x - rim <= point[0] <= place.right + rim
            and place.y - rim <= point[1] <= place.bottom + rim)  # fmt: skip


def lies_on(point: Point, one: Point, two: Point) -> bool:
    """Whether a point lies on a line that runs straight across or straight down."""
    (x1, x2), (y1, y2) = sorted((one[0], two[0])), sorted((one[1], two[1]))
    return lies_in(Rect(x1, y1, x2 - x1, y2 - y1), point, TOUCH)


@BOTH
def test_each_line_of_a_chain_has_its_own_words(style: Style) -> None:
    """Whichever result leads into it, and whichever way leads on from each of its boxes."""
    edges = {
        "look": (Edge("look", "end", "good"), Edge("look", "one", "bad")),
        "one": (Edge("one", "two", "first"),),
        "two": (Edge("two", "three", "second"), Edge("two", "end", "never")),
        "three": (Edge("three", "end", "third"),),
        "end": (),
    }
    nodes = {name: Node(name, "action", name, name) for name in edges}
    links = (ChainStep(1, "one"), ChainStep(0, "two"), ChainStep(0, "three"), ChainStep(0, "end"))
    block = OutlineBlock("look", (SideBranch(1, links),), 0)
    flow = Flow("drawn", nodes, edges, (OutlineSection((block,)),))
    ((_, _, _, parts),) = drawn(flow, style, 200, cut=True)
    labels = [part for part in parts if isinstance(part, Label)]
    words = [" ".join(run.text for run in label.runs) for label in labels]
    assert [said for said in words if said != "good"] == ["bad", "first", "second", "third"]


@BOTH
def test_the_words_at_the_foot_of_a_column_stay_in_it(style: Style) -> None:
    """Where the way down ends in a connector, they are broken as they were measured."""
    edges = {"a": (Edge("a", "b", "battery " * 9),), "b": (Edge("b", "a"),)}
    nodes = {name: Node(name, "check", "Look", name) for name in edges}
    block = OutlineBlock("a", (), 0)
    metrics = flow_metrics(Flow("drawn", nodes, edges, (OutlineSection((block,)),)))
    made = style.size(metrics, block, 220)
    parts = [*style.draw(Pen(metrics), block, made, Rect(0, 0, 220, 0), True)]
    rects = [part.rect for part in parts if not isinstance(part, Polyline)]
    assert max(rect.right for rect in rects) <= 220
    assert max(rect.bottom for rect in rects) <= made.body + made.cut
