"""Whether a wall chart can be read from as far as was asked, and what fits where it can't.

In: a chart on its sheets, a distance in meters. Out: yes or no, and the words of the refusal.
"""

from collections.abc import Sequence

from builder.chart.flow import Flow
from builder.chart.layout import LEAST_TEXT, Sheets, sheet_charts
from builder.chart.text_fit import Room
from builder.model.library import NotThereError
from builder.prints.paper import Paper, reads_from, text_to_read

MOST_SHEETS = 6  # that hang beside each other
STEP = 0.1  # meters by which a distance is made shorter until it fits


class TooFarError(NotThereError):
    """A chart that shall be read from so far that it takes more sheets than a wall holds."""


def holds_distance(sheets: Sheets, meters: float) -> bool:
    """Whether every word can be read from so far, on few enough sheets."""
    return len(sheets.charts) <= MOST_SHEETS and _reads(sheets) >= meters


def too_far(flow: Flow, rooms: Sequence[Room], paper: Paper, meters: float) -> str:
    """Say what fits instead of a distance that takes too many sheets."""
    nearer = meters
    sheets = sheet_charts(flow, rooms, LEAST_TEXT)
    while (nearer := round(nearer - STEP, 2)) > STEP:
        tried = sheet_charts(flow, rooms, max(text_to_read(nearer), LEAST_TEXT))
        if holds_distance(tried, nearer):
            sheets = tried
            break
    count, reached = len(sheets.charts), _reads(sheets)
    words = "1 sheet" if count == 1 else f"{count} sheets"
    return (
        f"from {meters:g} m this chart takes more than {MOST_SHEETS} sheets of {paper.name}; "
        f"`--distance {reached:g}m` fits on {words}"
    )


def _reads(sheets: Sheets) -> float:
    """Return the distance in meters from which every word of a chart can be read."""
    return min(reads_from(chart.small_size) for chart in sheets.charts)
