"""The two ways in which a chart is drawn.

In: nothing. Out: a `Style`, all that the flow of columns and the search for the width need: how
large a block is, how it is drawn, how narrow a column may be.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from builder.chart import right, under
from builder.chart.chart import Part, Rect
from builder.chart.paint import Pen
from builder.chart.size import Size
from builder.chart.stock import Stock
from builder.plan.outline import Block


@dataclass(frozen=True, slots=True)
class Style:
    """One way of drawing."""

    name: str
    size: Callable[[Stock, Block, float], Size]
    draw: Callable[[Pen, Block, Size, Rect, bool], Iterator[Part]]
    least: Callable[[Stock], float]


RIGHT = Style("right", right.size, right.draw, right.least)
UNDER = Style("under", under.size, under.draw, under.least)
STYLES = (RIGHT, UNDER)  # the plainest first
