"""A chart as it stands on paper or in the page: boxes, lines and words with their places.

In: made by `layout` from a `Flow`. Out: drawn by `svg` and by the sheets of `prints`, which agree
because nothing is placed after this point. Measures are those of the nominal text size, x to the
right, y downwards; times `scale` they are points on paper.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import NamedTuple

from builder.chart.spacing import SMALL, TEXT


class Shape(StrEnum):
    """Symbols of flowcharts after ISO 5807."""

    TERMINATOR = "terminator"  # start, fix, stop: rounded ends
    PROCESS = "process"  # a check or an action: a rectangle
    DECISION = "decision"  # the small diamond from which the results of a check leave
    CONNECTOR = "connector"  # goes on at the step whose number it bears
    PREDEFINED = "predefined"  # a procedure, another tree: double sides


class Rect(NamedTuple):
    """A place on the chart."""

    x: float
    y: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """The x of its right edge."""
        return self.x + self.width

    @property
    def bottom(self) -> float:
        """The y of its lower edge."""
        return self.y + self.height


class Run(NamedTuple):
    """Words on one baseline in one face and size."""

    text: str
    x: float
    y: float  # of the baseline
    size: float
    bold: bool
    width: float
    tone: str = (
        ""  # "" plain, "small", "number", "label", "change", or a signal word in small letters
    )


@dataclass(frozen=True, slots=True)
class Box:
    """A symbol with its words."""

    id: str  # the step it stands for; repeated where a fix is repeated
    kind: str  # start, check, action, fix, stop, handoff, connector, decision
    shape: Shape
    rect: Rect
    runs: tuple[Run, ...] = ()
    panel: float = 0  # height of the ground of the signal word, at the top of the box
    signal: str = ""  # DANGER, WARNING, CAUTION, NOTICE or none
    href: str = ""
    name: str = ""  # for a reader who does not see the chart
    number: str = ""  # of the step
    arrival: bool = False  # a connector somewhere leads here
    change: str = ""  # in a review: `new`, `changed`


@dataclass(frozen=True, slots=True)
class Polyline:
    """A polyline; an arrow head stands at its last point."""

    points: tuple[tuple[float, float], ...]
    arrow: bool
    rule: bool = False  # parts two sections, and leads nowhere


@dataclass(frozen=True, slots=True)
class Label:
    """The words of a result beside its line."""

    rect: Rect
    runs: tuple[Run, ...]


Part = Box | Polyline | Label


@dataclass(frozen=True, slots=True)
class Chart:
    """Everything on one sheet, or the whole chart of a page, in reading order."""

    title: str
    description: str
    width: float
    height: float
    scale: float
    parts: tuple[Part, ...]
    cuts: tuple[float, ...] = ()  # heights at which it may be cut without cutting a symbol

    @property
    def text_size(self) -> float:
        """Size of the words in the boxes, in points."""
        return TEXT * self.scale

    @property
    def small_size(self) -> float:
        """Size of labels and conditions, the smallest words on the chart, in points."""
        return SMALL * self.scale

    @property
    def boxes(self) -> tuple[Box, ...]:
        """The symbols, in reading order."""
        return tuple(part for part in self.parts if isinstance(part, Box))

    @property
    def lines(self) -> tuple[Polyline, ...]:
        """The lines between symbols."""
        return tuple(part for part in self.parts if isinstance(part, Polyline))

    @property
    def labels(self) -> tuple[Label, ...]:
        """The words beside lines."""
        return tuple(part for part in self.parts if isinstance(part, Label))
