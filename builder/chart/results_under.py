"""The style with the results under the check: one narrow column, the largest text.

In: a block of the outline and the width of its column. Out: its size, then its parts. The line
runs straight down at the left; every other result branches off to the right of it.
"""

from collections.abc import Iterator

from builder.chart.block_size import BlockSize
from builder.chart.chart import Part, Rect
from builder.chart.flow_metrics import ASKING, FlowMetrics, narrowest_rooms
from builder.chart.lane_rows import (
    draw_joint,
    draw_lane_row,
    joint_height,
    lane_row,
    lane_rows,
)
from builder.chart.parts import HALF, Pen, box_part, diamond
from builder.chart.spacing import LEAD_IN, TRUNK
from builder.plan.outline import OutlineBlock, SideBranch


def size(metrics: FlowMetrics, block: OutlineBlock, column: float) -> BlockSize:
    """Measure a block in a column of a given width."""
    head = metrics.box_height(block.step, column)
    found = lane_rows(metrics, block.step, block.sides, column - TRUNK)
    body = head + sum([one.height for one in found]) + (LEAD_IN if found else 0)
    if block.down is None:
        return BlockSize(head, found, body, 0, 0)
    tail = joint_height(metrics, block.step, block.down, column)
    foot = lane_row(metrics, block.step, SideBranch(block.down), column - TRUNK)
    return BlockSize(head, found, body, tail, LEAD_IN + foot.height)


def draw(pen: Pen, block: OutlineBlock, made: BlockSize, place: Rect, cut: bool) -> Iterator[Part]:
    """Yield the parts of a block; with `cut`, the way down ends in a connector."""
    trunk = place.x + TRUNK
    yield box_part(pen, block.step, Rect(place.x, place.y, place.width, made.head))
    start = place.y + made.head
    if pen.metrics.flow.nodes[block.step].kind in ASKING:
        yield diamond(block.step, trunk, start + HALF)
        start += 2 * HALF
    y = place.y + made.head + LEAD_IN
    for number, one in enumerate(made.rows):
        last = block.down is None and number == len(made.rows) - 1
        lane = Rect(trunk, y, place.right - trunk, one.height)
        yield from draw_lane_row(pen, block.step, one, lane, [(trunk, start)] if last else [])
        y += one.height
    if block.down is None:
        return
    foot = place.y + made.body
    if cut:
        one = lane_row(pen.metrics, block.step, SideBranch(block.down), place.width - TRUNK)
        lane = Rect(trunk, foot + LEAD_IN, place.right - trunk, one.height)
        yield from draw_lane_row(pen, block.step, one, lane, [(trunk, start)])
        return
    place = Rect(trunk, foot, place.width, made.tail)
    yield from draw_joint(pen, block.step, block.down, place, start)


def least(metrics: FlowMetrics) -> float:
    """Return the narrowest column: no word wider than its box, no box of single words."""
    checks, lane = narrowest_rooms(metrics)
    return max(TRUNK + lane, checks)
