"""The style with the results under the check: one column, the largest text.

In: a block of the outline and the width of its column. Out: its size, then its parts. The line
runs straight down at the left; every result but the last branches off to the right.
"""

from collections.abc import Iterator
from typing import NamedTuple

from builder.chart.chart import Line, Part, Rect
from builder.chart.measure import Broken, width
from builder.chart.paint import box_part, connector_part, diamond, label_part
from builder.chart.stock import CONNECTOR_HEIGHT, Stock
from builder.plan.outline import Block, Side

TRUNK = 9.0  # from the left edge to the line down
INDENT = 19.0  # from the left edge to a result's box under its label
BESIDE = 6.0  # from the line to the words beside it
ARROW = 7.0  # least length of a line with a head
LEAD_IN = 2.5  # below a box to the first words beside the line
ROW_GAP = 4.0
ENTRY = 9.5  # from the top of a box to the arrow that enters at its side


class Row(NamedTuple):
    """One result that branches off."""

    side: Side
    label: Broken
    label_height: float
    beside: bool  # the label stands on the arrow, not above the box
    left: float  # of the box
    boxes: list[tuple[Broken, float]]
    joints: list[tuple[Broken, float]]  # labels between the boxes of a chain, and their height
    height: float


class Size(NamedTuple):
    """A block measured at one width."""

    head: tuple[Broken, float]
    rows: list[Row]
    down: tuple[Broken, float]
    body: float  # the head and what branches off
    tail: float  # from the body to the next box of the section
    cut: float  # in place of the tail: the connector at the foot of a column


def size(stock: Stock, block: Block, column: float) -> Size:
    """Measure a block in a column of a given width."""
    head = stock.box(block.step, column)
    rows = _rows(stock, block, column)
    body = head[1] + sum([row.height for row in rows]) + (LEAD_IN if rows else 0)
    if block.down is None:
        return Size(head, rows, ([], 0), body, 0, 0)
    room = column - TRUNK - BESIDE
    down = stock.label(block.step, block.down, room)
    tail = max(down[1] + LEAD_IN + 2, 12.0)
    cut = LEAD_IN + _connector_height(stock, block, block.down, column)
    return Size(head, rows, down, body, tail, cut)


def _rows(stock: Stock, block: Block, column: float) -> list[Row]:
    above = [_row_above(stock, block.step, side, column) for side in block.sides]
    beside = [_row_beside(stock, block.step, side, column) for side in block.sides]
    whole = [row for row in beside if row]
    if len(whole) == len(above) and sum(r.height for r in whole) <= sum(r.height for r in above):
        return whole
    return above


def _row_above(stock: Stock, step: str, side: Side, column: float) -> Row:
    if not side.links:
        return _connector_row(stock, step, side, column)
    label, label_height = stock.label(step, side.lead, column - TRUNK - BESIDE)
    boxes = [stock.box(link.step, column - INDENT) for link in side.links]
    joints = _joints(stock, side, column - INDENT)
    total = label_height + (1.5 if label else 0) + _stack(boxes, joints) + ROW_GAP
    return Row(side, label, label_height, False, INDENT, boxes, joints, total)


def _row_beside(stock: Stock, step: str, side: Side, column: float) -> Row | None:
    if not side.links:
        return _connector_row(stock, step, side, column)
    label, label_height = stock.label(step, side.lead, column)
    left = TRUNK + BESIDE + width(label) + ARROW
    if not label or len(label) > 1 or left > 0.45 * column:
        return None
    boxes = [stock.box(link.step, column - left) for link in side.links]
    if any(stock.boxes[link.step].widest > column - left - 14 for link in side.links):
        return None
    joints = _joints(stock, side, column - left)
    total = _drop(label_height) + _stack(boxes, joints) + ROW_GAP
    return Row(side, label, label_height, True, left, boxes, joints, total)


def _drop(label_height: float) -> float:
    """From the top of a row to the top of its box, so that the label stands on the arrow."""
    return max(label_height + 1 - ENTRY, 0)


def _connector_row(stock: Stock, step: str, side: Side, column: float) -> Row:
    label, label_height = stock.label(step, side.lead, _connector_room(stock, step, side, column))
    left = TRUNK + BESIDE + width(label) + ARROW if label else INDENT
    total = _connector_height(stock, step, side.lead, column) + ROW_GAP
    return Row(side, label, label_height, True, left, [], [], total)


def _connector_room(stock: Stock, step: str, side: Side | int, column: float) -> float:
    lead = side if isinstance(side, int) else side.lead
    pill = stock.connectors[stock.target(step, lead)]
    return column - TRUNK - BESIDE - ARROW - pill


def _connector_height(stock: Stock, block: Block | str, lead: int, column: float) -> float:
    step = block if isinstance(block, str) else block.step
    _, label_height = stock.label(step, lead, _connector_room(stock, step, lead, column))
    return max(label_height + 1, CONNECTOR_HEIGHT / 2) + CONNECTOR_HEIGHT / 2


def _joints(stock: Stock, side: Side, room: float) -> list[tuple[Broken, float]]:
    found = []
    for before, link in zip(side.links, side.links[1:], strict=False):
        label, label_height = stock.label(before.step, link.lead, room - TRUNK - BESIDE)
        found.append((label, max(label_height + LEAD_IN + 2, 11.0)))
    return found


def _stack(boxes: list[tuple[Broken, float]], joints: list[tuple[Broken, float]]) -> float:
    return sum([high for _, high in boxes]) + sum([high for _, high in joints])


def draw(
    stock: Stock, block: Block, made: Size, x: float, y: float, column: float, cut: bool
) -> Iterator[Part]:
    """Yield the parts of a block whose top left corner stands at x, y.

    With `cut`, the way down ends in a connector at the foot of the column.
    """
    head, high = made.head
    trunk = x + TRUNK
    yield box_part(stock, block.step, head, Rect(x, y, column, high))
    start = y + high
    if stock.flow.nodes[block.step].kind == "check":
        yield diamond(block.step, trunk, start)
        start += 4
    at = y + high + LEAD_IN
    for number, row in enumerate(made.rows):
        last = block.down is None and number == len(made.rows) - 1
        yield from _draw_row(stock, block.step, row, x, at, column, start if last else None)
        at += row.height
    if block.down is None:
        return
    down, down_height = made.down
    foot = y + made.body
    if cut:
        side = Side(block.down)
        row = _connector_row(stock, block.step, side, column)
        yield from _draw_row(stock, block.step, row, x, foot + LEAD_IN, column, start)
        return
    yield Line(((trunk, start), (trunk, foot + made.tail)), True)
    if down:
        yield label_part(down, trunk + BESIDE, foot + LEAD_IN, down_height)


def _draw_row(
    stock: Stock, step: str, row: Row, x: float, y: float, column: float, start: float | None
) -> Iterator[Part]:
    """Yield a row; `start` is where the line comes down from if nothing else runs past it."""
    trunk = x + TRUNK
    left = x + row.left
    if row.boxes:
        top = y + (_drop(row.label_height) if row.beside else
                   row.label_height + (1.5 if row.label else 0))  # fmt: skip
        entry = top + min(ENTRY, row.boxes[0][1] / 2)
    else:
        entry = y + max(row.label_height + 1, CONNECTOR_HEIGHT / 2)
    corner = ((trunk, start), (trunk, entry)) if start is not None else ((trunk, entry),)
    yield Line((*corner, (left, entry)), True)
    if row.label:
        bottom = entry - 1 if row.beside else top - 1.5
        yield label_part(row.label, trunk + BESIDE, bottom - row.label_height, row.label_height)
    if not row.boxes:
        target = stock.target(step, row.side.lead)
        pill = stock.connectors[target]
        place = Rect(left, entry - CONNECTOR_HEIGHT / 2, pill, CONNECTOR_HEIGHT)
        yield connector_part(stock, target, place)
        return
    yield from _draw_chain(stock, row, left, top, x + column)


def _draw_chain(stock: Stock, row: Row, left: float, top: float, right: float) -> Iterator[Part]:
    for number, link in enumerate(row.side.links):
        lines, high = row.boxes[number]
        yield box_part(stock, link.step, lines, Rect(left, top, right - left, high))
        top += high
        if number < len(row.joints):
            label, joint = row.joints[number]
            yield Line(((left + TRUNK, top), (left + TRUNK, top + joint)), True)
            if label:
                yield label_part(label, left + TRUNK + BESIDE, top + LEAD_IN, joint - LEAD_IN - 2)
            top += joint
