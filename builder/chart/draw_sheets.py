"""A layout drawn, sheet by sheet.

In: a measured flow and a `SheetLayout`. Out: a `Chart` for each sheet.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import chain

from builder.chart.chart import Chart, Part, Polyline, Rect
from builder.chart.columns import Column, balanced_columns
from builder.chart.flow import Flow
from builder.chart.flow_metrics import FlowMetrics, Jump
from builder.chart.parts import Pen
from builder.chart.spacing import COLUMN_GAP, EDGE, SECTION_GAP, TEXT
from builder.chart.text_block import steps_named
from builder.chart.text_fit import SheetLayout


def sheet_drawings(measured: FlowMetrics, fit: SheetLayout) -> tuple[Chart, ...]:
    """Draw every sheet of a layout."""
    sheets = columns_by_sheet(fit)
    on_sheet, numbers = first_sheets(measured.flow, sheets)
    tops = frozenset(
        column.pieces[0].blocks[0].step
        for columns in sheets
        for column in columns
        if column.pieces and not column.pieces[0].first
    )
    return tuple(
        _sheet(Pen(measured, on_sheet, numbers, number, tops), fit, columns)
        for number, columns in enumerate(sheets, start=1)
    )


def with_even_columns(fit: SheetLayout) -> SheetLayout:
    """Make the columns of each sheet equally long."""
    even = [column for columns in columns_by_sheet(fit) for column in balanced_columns(columns)]
    return replace(fit, filled=tuple(even))


def first_sheets(
    flow: Flow, sheets: Sequence[Sequence[Column]]
) -> tuple[Mapping[str, int], Mapping[str, int]]:
    """Return the first sheet of each step, by its id and by its number."""
    steps: dict[str, int] = {}
    numbers: dict[str, int] = {}
    for sheet, columns in enumerate(sheets, start=1):
        for step in steps_in_columns(columns):
            steps.setdefault(step, sheet)
            numbers.setdefault(flow.nodes[step].number, sheet)
    return steps, numbers


def jumps_to_other_sheets(flow: Flow, fit: SheetLayout) -> Iterator[Jump]:
    """Yield the jumps of a layout that lead to another sheet than that of their box."""
    sheets = columns_by_sheet(fit)
    numbers = first_sheets(flow, sheets)[1]
    for sheet, columns in enumerate(sheets, start=1):
        for step in steps_in_columns(columns):
            for to in steps_named(flow.nodes[step]):
                if numbers.get(to, sheet) != sheet:
                    yield step, to


def columns_by_sheet(fit: SheetLayout) -> list[Sequence[Column]]:
    """Return the columns of each sheet."""
    starts = range(0, len(fit.filled), fit.columns)
    return [fit.filled[at : at + fit.columns] for at in starts]


def steps_in_columns(columns: Sequence[Column]) -> Iterator[str]:
    for piece in (piece for column in columns for piece in column.pieces):
        for block in piece.blocks:
            yield block.step
            yield from (link.step for side in block.sides for link in side.chain)


def _sheet(pen: Pen, fit: SheetLayout, columns: Sequence[Column]) -> Chart:
    parts: list[Part] = []
    cuts: list[float] = []
    x = EDGE
    for column, width in zip(columns, fit.widths, strict=False):  # the last sheet may need fewer
        for y, block_parts in _column(pen, fit, column, Rect(x, EDGE, width, 0)):
            cuts.append(y)
            parts += block_parts
        x += width + COLUMN_GAP
    flow = pen.metrics.flow
    return Chart(
        title=flow.title,
        description=chart_description(flow),
        width=x - COLUMN_GAP + EDGE,
        height=2 * EDGE + max(column.height for column in columns),
        scale=fit.text / TEXT,
        parts=tuple(parts),
        cuts=tuple(cuts) if len(columns) == 1 else (),
    )


def _column(
    pen: Pen, fit: SheetLayout, column: Column, place: Rect
) -> Iterator[tuple[float, Iterator[Part]]]:
    x, y, width, _ = place
    last = len(column.pieces) - 1
    for number, piece in enumerate(column.pieces):
        ends = number < last and column.pieces[number + 1].first
        for at, (block, made) in enumerate(zip(piece.blocks, piece.sizes, strict=True)):
            inner = at < len(piece.blocks) - 1
            cut = number == last and not inner and not piece.last
            drawn = fit.style.draw(pen, block, made, Rect(x, y, width, 0), cut)
            y, top = y + made.body + (made.tail if inner else 0), y
            rule = [] if inner or not ends else [_rule(x, y + SECTION_GAP / 2, width)]
            yield top, chain(drawn, rule)
        y += SECTION_GAP if ends else piece.tail


def _rule(x: float, y: float, width: float) -> Polyline:
    return Polyline(((x, y), (x + width, y)), arrow=False, rule=True)


def chart_description(flow: Flow) -> str:
    """Say in words what a chart shows: how many steps, and the usual way."""
    if not flow.sections:
        return "An empty chart."
    usual = [flow.nodes[block.step] for block in flow.sections[0].blocks]
    steps = "; ".join(f"{node.number} {node.text}" for node in usual if node.number)
    count = sum(1 for node in flow.nodes.values() if node.number)
    return f"{count} steps. The usual way, straight down: {steps}."
