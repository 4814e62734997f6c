"""The columns of one sheet, each as wide as what stands in it needs.

In: a layout on one sheet whose columns are all of one width. Out: the same pieces in the same
columns with larger text. Blocks are not cut, so a column may end well above the foot of the sheet:
it's made narrower until it is full, and what that saves goes to the others.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import partial
from itertools import islice

from builder.chart.columns import Column, MeasuredGroup, balanced_columns, column_height
from builder.chart.spacing import COLUMN_GAP, EDGE, TEXT
from builder.chart.step_function import StepFunction
from builder.chart.text_fit import LARGEST, WIDEST, SheetLayout, StyledFlow

UNEVEN = 1.25  # most that a column is wider or narrower than before: a sheet must look calm
SAME_TEXT = 1.003  # text sizes nearer than this are the same
SAME_WIDTH = 0.5  # points: widths nearer than this are the same

AnyWidth = StepFunction[Column]


def with_fitted_columns(drawn: StyledFlow, fit: SheetLayout) -> SheetLayout:
    """Return a layout on one sheet with the largest text that columns of several widths allow."""
    columns = balanced_columns(fit.filled)
    fit = best = replace(fit, filled=tuple(columns))
    measured = list(_at_any_width(drawn, columns))
    low, high = fit.text, min(fit.text * _spare(fit) ** 0.5, LARGEST)
    while high / low > SAME_TEXT:
        text = (low * high) ** 0.5
        widths = _widths(measured, drawn.least, fit, text)
        if widths:
            low = text
            filled = [at(width) for at, width in zip(measured, widths, strict=True)]
            best = replace(fit, text=text, widths=tuple(widths), filled=tuple(filled))
        else:
            high = text
    return best


def _at_any_width(drawn: StyledFlow, columns: Sequence[Column]) -> Iterator[AnyWidth]:
    parts = iter(drawn.galley.parts)
    for column in columns:
        yield StepFunction(partial(_column, tuple(islice(parts, len(column.pieces)))))


def _column(parts: Sequence[StepFunction[MeasuredGroup]], width: float) -> Column:
    pieces = tuple([part(width) for part in parts])
    return Column(pieces, column_height(pieces) if pieces else 0)


def _spare(fit: SheetLayout) -> float:
    """Return how often what stands in the columns would go into them."""
    heights = [column.height for column in fit.filled if column.pieces]
    return len(heights) * _inner_height(fit, fit.text) / sum(heights)


def _inner_height(fit: SheetLayout, text: float) -> float:
    return fit.room.first_height * TEXT / text - 2 * EDGE


def _widths(
    measured: Sequence[AnyWidth], least: float, fit: SheetLayout, text: float
) -> list[float] | None:
    """Return a width for every column at a text size; None if they are too wide together.

    A column that is left to words beside the chart keeps its width on paper.
    """
    high = _inner_height(fit, text)
    widths = []
    for at, column, width in zip(measured, fit.filled, fit.widths, strict=False):
        within = (max(least, width / UNEVEN), min(width * UNEVEN, WIDEST))
        widths.append(_narrowest(at, high, within) if column.pieces else width * fit.text / text)
    gaps = 2 * EDGE + (len(widths) - 1) * COLUMN_GAP
    left = fit.room.width * TEXT / text - gaps - sum(widths)
    return widths if left >= 0 else None


def _narrowest(at: AnyWidth, high: float, within: tuple[float, float]) -> float:
    """Return the least width in which a column is no higher than it may be."""
    low, wide = within
    if at(low).height <= high:
        return low
    if at(wide).height > high:
        return float("inf")
    while wide - low > SAME_WIDTH:
        middle = (low + wide) / 2
        low, wide = (low, middle) if at(middle).height <= high else (middle, wide)
    return wide
