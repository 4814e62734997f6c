"""The style with the results to the right: all checks in one straight column, all answers beside.

In: a block of the outline and the width of its column. Out: its size, then its parts.
"""

from collections.abc import Iterator

from builder.chart.block_size import BlockSize
from builder.chart.chart import Part, Rect
from builder.chart.flow_metrics import ASKING, FlowMetrics, narrowest_rooms
from builder.chart.lane_rows import (
    draw_joint,
    draw_lane_row,
    entry_height,
    joint_height,
    lane_row,
    lane_rows,
)
from builder.chart.parts import HALF, Pen, box_part, diamond
from builder.chart.spacing import BETWEEN, ENTRY, LEAD_IN, ROW_GAP, TRUNK
from builder.plan.outline import OutlineBlock, SideBranch

SHARE = 0.52  # of the width that the checks take: other shares gained nothing over many graphs


def split(column: float) -> tuple[float, float]:
    """Divide a column into the width of the checks and of the lane of results."""
    checks = SHARE * (column - BETWEEN)
    return checks, column - BETWEEN - checks


def size(metrics: FlowMetrics, block: OutlineBlock, column: float) -> BlockSize:
    """Measure a block in a column of a given width."""
    checks, lane = split(column)
    head = metrics.box_height(block.step, checks)
    found = lane_rows(metrics, block.step, block.sides, lane)
    beside = sum([one.height for one in found])
    if block.down is None:
        return BlockSize(head, found, max(head, beside - ROW_GAP), 0, 0)
    tail = joint_height(metrics, block.step, block.down, checks)
    body = max(head, beside - tail)
    foot = lane_row(metrics, block.step, SideBranch(block.down), checks - TRUNK)
    cut = max(head + LEAD_IN + foot.height, beside - ROW_GAP) - body
    return BlockSize(head, found, body, tail, cut)


def draw(pen: Pen, block: OutlineBlock, made: BlockSize, place: Rect, cut: bool) -> Iterator[Part]:
    """Yield the parts of a block; with `cut`, the way down ends in a connector."""
    checks, _ = split(place.width)
    trunk = place.x + TRUNK
    yield box_part(pen, block.step, Rect(place.x, place.y, checks, made.head))
    yield from _draw_rows(pen, block, made, place, place.x + checks)
    if block.down is None:
        return
    start = place.y + made.head
    if cut:
        one = lane_row(pen.metrics, block.step, SideBranch(block.down), checks - TRUNK)
        lane = Rect(trunk, start + LEAD_IN, checks - TRUNK, one.height)
        yield from draw_lane_row(pen, block.step, one, lane, [(trunk, start)])
        return
    place = Rect(trunk, start, checks, place.y + made.body + made.tail - start)
    yield from draw_joint(pen, block.step, block.down, place)


def _draw_rows(
    pen: Pen, block: OutlineBlock, made: BlockSize, place: Rect, edge: float
) -> Iterator[Part]:
    if not made.rows:
        return
    lane = edge + BETWEEN
    out = place.y + min(ENTRY, made.head / 2, entry_height(made.rows[0]))
    start = edge
    if pen.metrics.flow.nodes[block.step].kind in ASKING:
        yield diamond(block.step, edge + HALF, out)
        start += 2 * HALF
    y = place.y
    for number, one in enumerate(made.rows):
        last = number == len(made.rows) - 1
        where = Rect(lane, y, place.right - lane, one.height)
        yield from draw_lane_row(pen, block.step, one, where,
                            [(start, out), (lane, out)] if last else [])  # fmt: skip
        y += one.height


def least(metrics: FlowMetrics) -> float:
    """Return the narrowest column: no word wider than its box, no box of single words."""
    checks, lane = narrowest_rooms(metrics)
    return BETWEEN + max(checks / SHARE, lane / (1 - SHARE))
