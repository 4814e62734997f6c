"""What branches off from a check: one row a result, all boxes at one edge.

In: the sides of a block and the lane they stand in, the strip to the right of the line that they
leave from. Out: measured rows, then their parts. A result's words stand above its box, so that
every box of a lane begins at the same place; inside it where that is an end and room is saved. A
connector stands behind its words.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from builder.chart.chart import Box, Part, Polyline, Rect
from builder.chart.flow_metrics import FlowMetrics
from builder.chart.fonts import LEADING
from builder.chart.parts import Pen, box_part, connector_part, label_part
from builder.chart.spacing import (
    ARROW,
    BESIDE,
    CONNECTOR_HEIGHT,
    ENTRY,
    INDENT,
    LABEL_GAP,
    LEAD_IN,
    LEAST_GAP,
    ROW_GAP,
    SMALL,
)
from builder.plan.outline import SideBranch

Point = tuple[float, float]
LINE = LEADING * SMALL  # height of a line of a result's words


class LaneRow(NamedTuple):
    """One result, measured; without boxes it is a connector behind its words."""

    side: SideBranch
    label: float  # height of its words
    boxes: tuple[float, ...]  # heights
    joints: tuple[float, ...]  # heights of the gaps between them
    height: float
    inside: bool = False  # whether the words of the result stand in the box


def lane_rows(
    metrics: FlowMetrics, step: str, sides: Sequence[SideBranch], lane: float
) -> tuple[LaneRow, ...]:
    """Measure the rows of a step in a lane of a given width."""
    return tuple([lane_row(metrics, step, side, lane) for side in sides])


def lane_row(metrics: FlowMetrics, step: str, side: SideBranch, lane: float) -> LaneRow:
    """Measure a row."""
    words = metrics.labels[step][side.edge_index]
    label = words.height(lane - BESIDE)
    if not side.chain:
        beside = words.height(_connector_room(metrics, step, side, lane))
        behind = max(beside, _to_line(beside) + CONNECTOR_HEIGHT / 2)
        below = _above(label) + CONNECTOR_HEIGHT
        if behind <= below:
            return LaneRow(side, beside, (), (), behind + ROW_GAP)
        return LaneRow(side, label, (CONNECTOR_HEIGHT,), (), below + ROW_GAP)
    boxes = tuple([metrics.box_height(link.step, lane - INDENT) for link in side.chain])
    joints = tuple(
        [
            joint_height(metrics, one.step, two.edge_index, lane - INDENT)
            for one, two in pairwise(side.chain)
        ]
    )
    whole = _above(label) + sum(boxes) + sum(joints)
    inside = metrics.inside_height(step, side.edge_index, lane - INDENT)
    if inside and len(boxes) == 1 and inside <= whole:
        return LaneRow(side, 0, (inside,), (), inside + ROW_GAP, inside=True)
    return LaneRow(side, label, boxes, joints, whole + ROW_GAP)


def _connector_room(metrics: FlowMetrics, step: str, side: SideBranch, lane: float) -> float:
    return lane - BESIDE - ARROW - 1 - metrics.connectors[metrics.target(step, side.edge_index)]


def joint_height(metrics: FlowMetrics, step: str, lead: int, column: float) -> float:
    """Measure the way straight down from a box to the next, with its words."""
    label = metrics.labels[step][lead].height(column - 2 * BESIDE - INDENT)
    return max(LEAD_IN + label + 2, LEAST_GAP)


def _above(label: float) -> float:
    return label + LABEL_GAP if label else 0


def _to_line(label: float) -> float:
    """From the top of a connector's row to its line."""
    return max(label - LINE / 2, CONNECTOR_HEIGHT / 2)


def entry_height(row: LaneRow) -> float:
    """From the top of a row to the arrow that enters its box or connector."""
    if not row.boxes:
        return _to_line(row.label)
    return _above(row.label) + min(ENTRY, row.boxes[0] / 2)


def draw_lane_row(
    pen: Pen, step: str, row: LaneRow, place: Rect, start: Sequence[Point] = ()
) -> Iterator[Part]:
    """Yield the parts of a row; its line comes through `start` and leaves the lane's left edge."""
    if row.inside:
        yield from _draw_inside(pen, step, row, place, start)
        return
    if not row.boxes:
        yield from _draw_connector(pen, step, row, place, start)
        return
    x, at = place.x, place.y + entry_height(row)
    left = x + INDENT
    words = pen.metrics.labels[step][row.side.edge_index]
    label = label_part(words, place.width - BESIDE, x + BESIDE, place.y)
    yield Polyline((*start, (x, at), (left, at)), True)
    if label:
        yield label
    if row.side.chain:
        yield from _draw_chain(pen, row, Rect(left, place.y + _above(row.label),
                                              place.right - left, 0))  # fmt: skip
        return
    yield _connector(pen, step, row, left, at)


def _connector(pen: Pen, step: str, row: LaneRow, left: float, at: float) -> Box:
    target = pen.metrics.target(step, row.side.edge_index)
    wide = pen.metrics.connectors[target]
    return connector_part(
        pen, target, Rect(left, at - CONNECTOR_HEIGHT / 2, wide, CONNECTOR_HEIGHT)
    )


def _draw_connector(
    pen: Pen, step: str, row: LaneRow, place: Rect, start: Sequence[Point]
) -> Iterator[Part]:
    """Yield a connector on the line of its words: the line leads to them, and on behind them."""
    x, at = place.x, place.y + entry_height(row)
    words = pen.metrics.labels[step][row.side.edge_index]
    room = _connector_room(pen.metrics, step, row.side, place.width)
    label = label_part(words, room, x + BESIDE, at + LINE / 2 - row.label)
    left = label.rect.right + ARROW + 1 if label else x + INDENT
    first = label.rect.x - 1 if label else left
    yield Polyline((*start, (x, at), (first, at)), not label)
    if label:
        yield label
        yield Polyline(((label.rect.right + 1, at), (left, at)), True)
    yield _connector(pen, step, row, left, at)


def _draw_inside(
    pen: Pen, step: str, row: LaneRow, place: Rect, start: Sequence[Point]
) -> Iterator[Part]:
    """Yield the line to an end, and its box with the result inside it."""
    left, at = place.x + INDENT, place.y + entry_height(row)
    yield Polyline((*start, (place.x, at), (left, at)), True)
    edge = pen.metrics.flow.edges[step][row.side.edge_index]
    where = Rect(left, place.y, place.right - left, row.boxes[0])
    yield box_part(pen, edge.target, where, edge)


def _draw_chain(pen: Pen, row: LaneRow, place: Rect) -> Iterator[Part]:
    x, top = place.x, place.y
    for number, (link, high) in enumerate(zip(row.side.chain, row.boxes, strict=True)):
        yield box_part(pen, link.step, Rect(x, top, place.width, high))
        top += high
        if number < len(row.joints):
            gap = row.joints[number]
            lead = row.side.chain[number + 1].edge_index
            yield from draw_joint(pen, link.step, lead, Rect(x + INDENT, top, place.width, gap))
            top += gap


def draw_joint(
    pen: Pen, step: str, lead: int, place: Rect, start: float | None = None
) -> Iterator[Part]:
    """Yield a line straight down and its words; the place begins at the line.

    The line comes from `start` if that is not the top of the place.
    """
    yield Polyline(((place.x, start or place.y), (place.x, place.bottom)), True)
    room = place.width - 2 * BESIDE - INDENT
    label = label_part(pen.metrics.labels[step][lead], room, place.x + BESIDE, place.y + LEAD_IN)
    if label:
        yield label
