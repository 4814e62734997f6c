"""Whether a wall chart can be read from as far as was asked, and what fits where it can't.

In: a chart on its sheets, a distance in meters. Out: yes or no, and the words of the refusal.
"""

from collections.abc import Callable, Sequence

from builder.chart.chart import Chart
from builder.chart.layout import LEAST_TEXT
from builder.model.library import NotThereError
from builder.prints.paper import Paper, reads_from, text_to_read

MOST_SHEETS = 6  # that hang beside each other
STEP = 0.1  # meters by which a distance is made shorter until it fits


class TooFarError(NotThereError):
    """A chart that shall be read from so far that it takes more sheets than a wall holds."""


def holds_distance(charts: Sequence[Chart], meters: float) -> bool:
    """Whether every word can be read from so far, on few enough sheets."""
    return len(charts) <= MOST_SHEETS and _reads(charts) >= meters


def too_far(laid_out: Callable[[float], Sequence[Chart]], paper: Paper, meters: float) -> str:
    """Say what fits instead of a distance that takes too many sheets.

    `laid_out` gives the sheets for a text size in points.
    """
    nearer = meters
    charts = laid_out(LEAST_TEXT)
    while (nearer := round(nearer - STEP, 2)) > STEP:
        tried = laid_out(max(text_to_read(nearer), LEAST_TEXT))
        if holds_distance(tried, nearer):
            charts = tried
            break
    words = "1 sheet" if len(charts) == 1 else f"{len(charts)} sheets"
    return (
        f"from {meters:g} m this chart takes more than {MOST_SHEETS} sheets of {paper.name}; "
        f"`--distance {_reads(charts):g}m` fits on {words}"
    )


def _reads(charts: Sequence[Chart]) -> float:
    """Return the distance in meters from which every word of a chart can be read."""
    return min(reads_from(chart.small_size) for chart in charts)
