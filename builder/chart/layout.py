"""From a tree to the charts of a page and of sheets.

In: a `Tree` and, for paper, the room on each sheet. Out: `Chart`s.
"""

from collections.abc import Iterator

from builder.chart import under
from builder.chart.chart import Chart, Part
from builder.chart.columns import Column, Measured, balanced, pieces
from builder.chart.flow import Flow, flow_of
from builder.chart.measure import SMALL, TEXT
from builder.chart.stock import Stock, stock
from builder.model.library import Library
from builder.model.tree import Tree
from builder.plan.outline import Block

PAGE_WIDTH = 240.0  # of a column in the page, at the nominal text size
PAGE_SCALE = 1.45


def page_chart(tree: Tree, library: Library | None = None) -> Chart:
    """Lay a tree out in one column for the page."""
    return one_column(flow_of(tree, library), PAGE_WIDTH).moved(0, 0, PAGE_SCALE)


def one_column(flow: Flow, width: float) -> Chart:
    """Lay a flow out in one column of a given width at the nominal text size."""
    measured = stock(flow)
    sizes = {}

    def measure(block: Block) -> Measured:
        made = sizes[block] = under.size(measured, block, width)
        return Measured(made.body, made.tail, made.cut)

    columns = balanced(pieces(measured, measure), 1, 1e9) or []
    parts: list[Part] = []
    for column in columns:
        parts += _column_parts(measured, column, sizes, 1, width)
    high = max((column.height for column in columns), default=0) + 2
    return Chart(flow.title, "", width + 2, high, TEXT, SMALL, tuple(parts))


def _column_parts(
    measured: Stock, column: Column, sizes: dict[Block, under.Size], x: float, width: float
) -> Iterator[Part]:
    y = 1.0
    for number, piece in enumerate(column.pieces):
        if number:
            before = column.pieces[number - 1]
            y += 13.0 if piece.first else before.tail
        for block in piece.blocks:
            made = sizes[block]
            end = block is piece.blocks[-1] and not piece.last and piece is column.pieces[-1]
            yield from under.draw(measured, block, made, x, y, width, end)
            y += made.body + (made.tail if block is not piece.blocks[-1] else 0)
