"""The search for the largest text that fits the sheets.

In: a measured flow, a style, the room on each sheet. Out: a `SheetLayout`: the text size, how
many columns, how wide, and what stands in each.

Height is measured at a few widths first. From these the text size that would fill the columns to
the last line is known for every number of columns; only those that can win are then laid out.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from builder.chart.columns import (
    Column,
    Galley,
    block_groups,
    fill_columns,
    galley,
    galley_height,
)
from builder.chart.flow_metrics import FlowMetrics
from builder.chart.spacing import COLUMN_GAP, EDGE, TEXT
from builder.chart.styles import Style

SAME_SIZE = 1.01  # text sizes nearer than this are the same
WIDEST = 420.0  # of a column: longer lines are hard to follow
LARGEST = 48.0  # points: larger text gains nothing on paper
MOST_COLUMNS = 12
SAMPLES = 3  # widths at which the height is measured
FIRST_TRY = 0.96  # of the text size that fills every column to the last line: what is tried first


@dataclass(frozen=True, slots=True)
class Room:
    """The room for a chart on each sheet, in points; the first may leave some to a heading.

    `beside` tells how high the words are that stand to the left of the chart on the first sheet,
    if they get so much width; they take as many columns as they need, and leave some to the chart.
    """

    width: float
    height: float
    first_height: float
    beside: Callable[[float], float] | None = None


@dataclass(frozen=True, slots=True)
class SheetLayout:
    """A layout that fits."""

    style: Style
    room: Room
    text: float  # size of the words in the boxes, in points
    widths: tuple[float, ...]  # of the columns of every sheet, at the nominal text size
    filled: tuple[Column, ...]

    @property
    def columns(self) -> int:
        """How many columns a sheet has."""
        return len(self.widths)

    @property
    def sheets(self) -> int:
        """How many sheets it takes."""
        return -(-len(self.filled) // self.columns)

    @property
    def begins(self) -> bool:
        """Whether the chart begins on the first sheet; if not, that holds a heading only."""
        return any(column.pieces for column in self.filled[: self.columns])


@dataclass(frozen=True, slots=True)
class StyledFlow:
    """A flow in one style, measured as far as it was asked."""

    style: Style
    galley: Galley
    least: float  # narrowest column
    heights: Sequence[tuple[float, float]]  # width of a column, height of everything in one column


def styled_flow(
    metrics: FlowMetrics, style: Style, separate: bool = False, earlier: StyledFlow | None = None
) -> StyledFlow:
    """Prepare a search; `separate` as in `block_groups`, `earlier` as in `galley`."""
    joined = block_groups(metrics.flow.sections, separate)
    column = galley(metrics, style, joined, earlier.galley if earlier else None)
    least = style.least(metrics)
    step = max(WIDEST / least, 1.0) ** (1 / (SAMPLES - 1))
    widths = [least * step**number for number in range(SAMPLES)]
    heights = [(width, galley_height(column.at(width))) for width in widths]
    return StyledFlow(style, column, least, heights)


@dataclass(frozen=True, slots=True)
class FitTask:
    """What is to be fitted, and into what."""

    drawn: StyledFlow
    room: Room
    begins: bool  # whether the chart must begin on the first sheet


def fit_task(drawn: StyledFlow, room: Room) -> FitTask:
    """Put a flow before a way to use the paper."""
    return FitTask(drawn, room, begins=room.beside is not None)


def column_width(task: FitTask, text: float, columns: int) -> float:
    """Width of a column at the nominal text size, were the text `text` points high."""
    whole = task.room.width * TEXT / text - 2 * EDGE - (columns - 1) * COLUMN_GAP
    return min(whole / columns, WIDEST)


def layout_at_size(task: FitTask, text: float, columns: int, sheets: int) -> SheetLayout | None:
    """Fit at one text size with so many columns a sheet; None if it does not fit."""
    column = column_width(task, text, columns)
    if column < task.drawn.least:
        return None
    items = task.drawn.galley.at(column)
    filled = fill_columns(items, _heights(task.room, text, columns, column), columns * sheets)
    if not filled:
        return None
    widths = (column,) * columns
    fit = SheetLayout(task.drawn.style, task.room, text, widths, tuple(filled))
    return fit if fit.begins or not task.begins else None


def _heights(room: Room, text: float, columns: int, column: float) -> list[float]:
    """Heights of the columns of the first sheet, then of all others."""
    scale = text / TEXT
    taken = 0
    while room.beside and taken < columns:
        taken += 1
        wide = (taken * (column + COLUMN_GAP) - COLUMN_GAP) * scale
        if room.beside(int(wide)) <= room.first_height:
            break
    first, rest = (high / scale - 2 * EDGE for high in (room.first_height, room.height))
    return [0.0] * taken + [first] * (columns - taken) + [rest]


def fewest_sheets_layout(task: FitTask, text: float, most: int) -> SheetLayout | None:
    """Fit at one text size on as few sheets as it takes; of equals, the widest columns."""
    best: SheetLayout | None = None
    for columns in range(1, MOST_COLUMNS):
        found = layout_at_size(task, text, columns, best.sheets - 1 if best else most)
        best = found or best
    return best


def largest_layout(
    task: FitTask, sheets: int, least: float = 1, beyond: float = 0
) -> SheetLayout | None:
    """Find the largest text, `least` points or more, with which it fits on so many sheets.

    Nothing is looked for that cannot be larger than `beyond`.
    """
    best: SheetLayout | None = None
    for limit, columns in sorted(_limits(task, sheets), reverse=True):
        beat = best.text * SAME_SIZE if best else least
        if limit > max(beat, beyond):
            best = _grown(task, columns, sheets, (beat, limit)) or best
    return best


def _limits(task: FitTask, sheets: int) -> Iterator[tuple[float, int]]:
    """Yield for each number of columns the text size that would fill them to the last line."""
    for columns in range(1, MOST_COLUMNS):
        low, high = 1.0, LARGEST
        while high / low > SAME_SIZE:
            text = (low * high) ** 0.5
            column = column_width(task, text, columns)
            fits = column >= task.drawn.least
            if fits:
                *first, rest = _heights(task.room, text, columns, column)
                has = sum(first) + (sheets - 1) * columns * rest
                fits = height_at(task.drawn.heights, column) <= has
            low, high = (text, high) if fits else (low, text)
        if low > 1:
            yield high, columns


def height_at(heights: Sequence[tuple[float, float]], width: float) -> float:
    """Height at a width, between two that were measured: it goes with the inverse of the width."""
    before = heights[0]
    for after in heights[1:]:
        if width <= after[0]:
            share = (1 / width - 1 / after[0]) / (1 / before[0] - 1 / after[0])
            return after[1] + share * (before[1] - after[1])
        before = after
    return before[1]


def _grown(
    task: FitTask, columns: int, sheets: int, within: tuple[float, float]
) -> SheetLayout | None:
    """Find the largest text that fits between the least worth having and a limit."""
    low, high = within
    text = max(high * FIRST_TRY, low)
    best: SheetLayout | None = None
    while high / low > SAME_SIZE:
        found = layout_at_size(task, text, columns, sheets)
        if found:
            best, low = found, text
        elif text == low:
            return None
        else:
            high = text
        text = (low * high) ** 0.5 if best else max(high * FIRST_TRY, low)
    return best
