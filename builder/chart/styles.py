"""The two ways in which a chart is drawn.

In: nothing. Out: a `Style`, all that the flow of columns and the search for the width need: how
large a block is, how it is drawn, how narrow a column may be.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from builder.chart import results_right, results_under
from builder.chart.block_size import BlockSize
from builder.chart.chart import Part, Rect
from builder.chart.flow_metrics import FlowMetrics
from builder.chart.parts import Pen
from builder.plan.outline import OutlineBlock


@dataclass(frozen=True, slots=True)
class Style:
    """One way of drawing."""

    name: str
    size: Callable[[FlowMetrics, OutlineBlock, float], BlockSize]
    draw: Callable[[Pen, OutlineBlock, BlockSize, Rect, bool], Iterator[Part]]
    least: Callable[[FlowMetrics], float]


RIGHT = Style("right", results_right.size, results_right.draw, results_right.least)
UNDER = Style("under", results_under.size, results_under.draw, results_under.least)
STYLES = (RIGHT, UNDER)  # the plainest first
