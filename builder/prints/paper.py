"""The papers of a shop, and how far away their text can be read.

In: the name of a paper, a distance in meters. Out: measures in points, sizes of text, distances.
Sizes from ISO 216 (A3, A4) and ANSI/ASME Y14.1 (Letter is A, Tabloid is B), both from memory.
"""

from dataclasses import dataclass

from builder.chart.fonts import medium
from builder.chart.spacing import SMALL, TEXT
from builder.trade.legibility import (
    LEAST_MINUTES,
    PREFERRED_MINUTES,
    capital_height,
    reading_distance,
)

MILLIMETER = 72 / 25.4  # points
MARGIN = 30.0  # 0.42 inch: office printers leave a quarter blank (common practice, no source)
HEAD_DISTANCE = 2.0  # meters from which the head of a wall chart reads


@dataclass(frozen=True, slots=True)
class Paper:
    """A sheet, upright unless turned; points."""

    name: str
    width: float
    height: float

    @property
    def turned(self) -> "Paper":
        """The same sheet, lying."""
        return Paper(self.name, self.height, self.width)

    @property
    def inner_width(self) -> float:
        """Width between the margins."""
        return self.width - 2 * MARGIN

    @property
    def inner_height(self) -> float:
        """Height between the margins."""
        return self.height - 2 * MARGIN


PAPERS = {
    "letter": Paper("letter", 8.5 * 72, 11 * 72),
    "tabloid": Paper("tabloid", 11 * 72, 17 * 72),
    "a4": Paper("a4", 210 * MILLIMETER, 297 * MILLIMETER),
    "a3": Paper("a3", 297 * MILLIMETER, 420 * MILLIMETER),
}


WALL_PAPERS = {"letter": "tabloid", "a4": "a3"}  # the wall has the larger sheet of the shop's kind


def wall_paper(paper: str, shops: str) -> Paper:
    """Return the paper of a wall chart: the one asked for, else the large one beside the shop's."""
    return PAPERS[paper or WALL_PAPERS.get(shops, shops)]


def size_to_read(meters: float) -> float:
    """Text size in points whose capitals fill 16 minutes of arc at a distance."""
    return capital_height(meters, LEAST_MINUTES) * MILLIMETER / medium().capital


def text_to_read(meters: float) -> float:
    """Text size of the boxes of a chart whose smallest words can be read at a distance."""
    return size_to_read(meters) * TEXT / SMALL


def reads_from(size: float, minutes: float = LEAST_MINUTES) -> float:
    """Distance in meters from which text of a size can be read, down to the next 5 cm."""
    meters = reading_distance(size * medium().capital / MILLIMETER, minutes)
    return int(meters * 20 + 1e-9) / 20


def reading_words(size: float) -> str:
    """Say from how far text of a size can be read, at the least angle and in comfort."""
    least, easy = reads_from(size), reads_from(size, PREFERRED_MINUTES)
    return f"Steps read from {least:g} m, with ease from {easy:g} m"
