"""What branches off from a check: one row a result, all boxes at one edge.

In: the sides of a block and the lane they stand in, the strip to the right of the line that they
leave from. Out: measured rows, then their parts. A result's words stand above its box, so that
every box of a lane begins at the same place; a connector stands behind its words.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from builder.chart.chart import Line, Part, Rect
from builder.chart.gaps import (
    ARROW,
    BESIDE,
    CONNECTOR_HEIGHT,
    ENTRY,
    INDENT,
    LABEL_GAP,
    LEAD_IN,
    LEAST_GAP,
    ROW_GAP,
)
from builder.chart.measure import width
from builder.chart.paint import Pen, box_part, connector_part, label_part
from builder.chart.stock import Lines, Stock
from builder.plan.outline import Side


class Row(NamedTuple):
    """One result; without boxes it is a connector."""

    side: Side
    label: Lines
    boxes: tuple[Lines, ...]
    joints: tuple[tuple[Lines, float], ...]  # label and height of the gap between two boxes
    height: float


def rows(stock: Stock, step: str, sides: Sequence[Side], lane: float) -> tuple[Row, ...]:
    """Measure the rows of a step in a lane of a given width."""
    return tuple(
        _chain_row(stock, step, side, lane)
        if side.links
        else connector_row(stock, step, side, lane)
        for side in sides
    )


def _chain_row(stock: Stock, step: str, side: Side, lane: float) -> Row:
    label = stock.label(step, side.lead, lane - BESIDE)
    boxes = tuple(stock.box(link.step, lane - INDENT) for link in side.links)
    joints = tuple(
        joint(stock, before.step, link.lead, lane - INDENT) for before, link in pairwise(side.links)
    )
    stack = sum(high for _, high in boxes) + sum(high for _, high in joints)
    return Row(side, label, boxes, joints, _above(label) + stack + ROW_GAP)


def connector_row(stock: Stock, step: str, side: Side, lane: float) -> Row:
    """Measure a row that is a connector: its words, then a line to the number under them."""
    pill = stock.connectors[stock.target(step, side.lead)]
    label = stock.label(step, side.lead, lane - BESIDE - ARROW - pill)
    return Row(side, label, (), (), _to_line(label) + CONNECTOR_HEIGHT / 2 + ROW_GAP)


def joint(stock: Stock, step: str, lead: int, column: float) -> tuple[Lines, float]:
    """Measure the way straight down from a box to the next: its label and the gap."""
    label = stock.label(step, lead, column - 2 * BESIDE - INDENT)
    return label, max(LEAD_IN + label[1] + 2, LEAST_GAP)


def _above(label: Lines) -> float:
    return label[1] + LABEL_GAP if label[0] else 0


def _to_line(label: Lines) -> float:
    """From the top of a connector's row to its line."""
    return max(label[1] + 1, CONNECTOR_HEIGHT / 2)


def entry(row: Row) -> float:
    """From the top of a row to the arrow that enters its box or connector."""
    if not row.boxes:
        return _to_line(row.label)
    return _above(row.label) + min(ENTRY, row.boxes[0][1] / 2)


def draw_row(pen: Pen, step: str, row: Row, place: Rect, start: Sequence[tuple[float, float]]
             ) -> Iterator[Part]:  # fmt: skip
    """Yield the parts of a row; its line comes through `start` and leaves the lane's left edge."""
    x, y = place.x, place.y
    at = y + entry(row)
    label, label_height = row.label
    label_y = y if row.boxes else at - 1 - label_height
    left = x + INDENT
    if not row.boxes and label:
        left = x + BESIDE + width(label) + ARROW
    yield Line((*start, (x, at), (left, at)), True)
    if label:
        yield label_part(label, x + BESIDE, label_y, label_height)
    if row.boxes:
        yield from _draw_chain(pen, row, Rect(left, y + _above(row.label), place.right - left, 0))
        return
    target = pen.stock.target(step, row.side.lead)
    pill = Rect(left, at - CONNECTOR_HEIGHT / 2, pen.stock.connectors[target], CONNECTOR_HEIGHT)
    yield connector_part(pen, target, pill)


def _draw_chain(pen: Pen, row: Row, place: Rect) -> Iterator[Part]:
    top = place.y
    for number, link in enumerate(row.side.links):
        lines, high = row.boxes[number]
        yield box_part(pen, link.step, lines, Rect(place.x, top, place.width, high))
        top += high
        if number < len(row.joints):
            label, gap = row.joints[number]
            yield from draw_joint(label, (place.x + INDENT, top), gap)
            top += gap


def draw_joint(label: Lines, start: tuple[float, float], gap: float) -> Iterator[Part]:
    """Yield a line straight down and its words."""
    x, y = start
    yield Line(((x, y), (x, y + gap)), True)
    if label[0]:
        yield label_part(label[0], x + BESIDE, y + LEAD_IN, label[1])
