"""The search for the largest text that fits the sheets.

In: a measured flow, a style, the room on each sheet. Out: a `Fit`: the text size, how many columns,
how wide, and what stands in each.
"""

from collections.abc import Callable
from dataclasses import dataclass

from builder.chart.columns import Column, Groups, fill, groups, pieces
from builder.chart.gaps import COLUMN_GAP, EDGE, TEXT
from builder.chart.stock import Stock
from builder.chart.styles import Style

FINE = 1.01  # text sizes nearer than this are the same
WIDEST = 420.0  # of a column: longer lines are hard to follow
LARGEST = 48.0  # points; larger text gains nothing on paper
MOST_COLUMNS = 14


@dataclass(frozen=True, slots=True)
class Room:
    """The room for a chart on each sheet, in points; the first may leave some to a heading."""

    width: float
    height: float
    first_height: float


@dataclass(frozen=True, slots=True)
class Fit:
    """A layout that fits."""

    style: Style
    text: float  # size of the words in the boxes, in points
    columns: int  # on each sheet
    column: float  # width at the nominal text size
    filled: tuple[Column, ...]

    @property
    def sheets(self) -> int:
        """How many sheets it takes."""
        return -(-len(self.filled) // self.columns)


@dataclass(frozen=True, slots=True)
class Case:
    """What is to be fitted, and into what."""

    stock: Stock
    style: Style
    joined: Groups
    least: float
    room: Room


def case(stock: Stock, style: Style, room: Room) -> Case:
    """Prepare a search."""
    return Case(stock, style, groups(stock.flow.sections), style.least(stock), room)


def at_size(wanted: Case, text: float, columns: int, sheets: int) -> Fit | None:
    """Fit at one text size with so many columns a sheet; None if it does not fit."""
    room, scale = wanted.room, text / TEXT
    column = (room.width / scale - 2 * EDGE - (columns - 1) * COLUMN_GAP) / columns
    if column < wanted.least:
        return None
    column = min(column, WIDEST)
    items = pieces(wanted.stock, wanted.style, wanted.joined, column)
    heights = room.first_height / scale - 2 * EDGE, room.height / scale - 2 * EDGE
    filled = fill(items, lambda number: heights[number >= columns], columns * sheets)
    return filled and Fit(wanted.style, text, columns, column, tuple(filled))


def fewest_sheets(wanted: Case, text: float, most: int = 99) -> Fit | None:
    """Fit at one text size on as few sheets as it takes; of equals, the widest columns."""
    best: Fit | None = None
    for columns in range(1, MOST_COLUMNS):
        found = at_size(wanted, text, columns, best.sheets - 1 if best else most)
        best = found or best
        if best and best.sheets == 1:
            break
    return best


def largest(wanted: Case, sheets: int, least: float = 0) -> Fit | None:
    """Find the largest text above `least` with which it fits on so many sheets."""
    best: Fit | None = None
    for columns in range(1, MOST_COLUMNS):
        beat = max(best.text * FINE if best else 1.0, least)
        if wanted.room.width < columns * wanted.least * beat / TEXT:
            break
        best = _grown(lambda text, n=columns: at_size(wanted, text, n, sheets), beat) or best
    return best


def _grown(fits: Callable[[float], Fit | None], least: float) -> Fit | None:
    """Grow the text from the least that is worth it until it no longer fits."""
    best = fits(least)
    if best is None:
        return None
    low, high = least, least
    while best.text == high and high < LARGEST:
        low, high = high, min(high * 1.25, LARGEST)
        best = fits(high) or best
    while high / low > FINE and low < LARGEST:
        middle = (low * high) ** 0.5
        found = fits(middle)
        if found:
            best, low = found, middle
        else:
            high = middle
    return best
