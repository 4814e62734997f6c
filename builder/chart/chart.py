"""A chart as it stands on paper or in the page: boxes, lines and words with their places.

In: made by `layout` from a `Flow`. Out: drawn by `svg` and by the sheets of `prints`, which agree
because nothing is placed after this point. All measures in points, x to the right, y downwards.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import StrEnum


class Shape(StrEnum):
    """Symbols of flowcharts after ISO 5807."""

    TERMINATOR = "terminator"  # start, fix, stop: rounded ends
    PROCESS = "process"  # a check or an action: a rectangle
    DECISION = "decision"  # the small diamond from which the results of a check leave
    CONNECTOR = "connector"  # goes on at the step whose number it bears
    PREDEFINED = "predefined"  # another tree: a rectangle with double sides


@dataclass(frozen=True, slots=True)
class Rect:
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

    def moved(self, dx: float, dy: float, scale: float = 1) -> "Rect":
        """Scale about the origin, then shift."""
        return Rect(self.x * scale + dx, self.y * scale + dy, self.width * scale,
                    self.height * scale)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Run:
    """Words on one baseline in one face and size."""

    text: str
    x: float
    y: float  # of the baseline
    size: float
    bold: bool
    width: float
    tone: str = ""  # "" plain, "small", "number", "label", or a signal word in small letters

    def moved(self, dx: float, dy: float, scale: float = 1) -> "Run":
        """Scale about the origin, then shift."""
        return replace(self, x=self.x * scale + dx, y=self.y * scale + dy, size=self.size * scale,
                       width=self.width * scale)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Box:
    """A symbol with its words."""

    id: str  # the step it stands for; repeated where a fix is repeated
    kind: str  # start, check, action, fix, stop, hand-over, connector, decision
    shape: Shape
    rect: Rect
    runs: tuple[Run, ...] = ()
    panel: Rect | None = None  # ground of the signal word
    signal: str = ""  # DANGER, WARNING, CAUTION, NOTICE or none
    href: str = ""
    name: str = ""  # for a reader who does not see the chart
    arrival: bool = False  # a connector somewhere leads here

    def moved(self, dx: float, dy: float, scale: float = 1) -> "Box":
        """Scale about the origin, then shift."""
        return replace(
            self,
            rect=self.rect.moved(dx, dy, scale),
            runs=tuple(run.moved(dx, dy, scale) for run in self.runs),
            panel=self.panel and self.panel.moved(dx, dy, scale),
        )


@dataclass(frozen=True, slots=True)
class Line:
    """A polyline; an arrow head stands at its last point."""

    points: tuple[tuple[float, float], ...]
    arrow: bool

    def moved(self, dx: float, dy: float, scale: float = 1) -> "Line":
        """Scale about the origin, then shift."""
        return replace(self, points=tuple((x * scale + dx, y * scale + dy) for x, y in self.points))


@dataclass(frozen=True, slots=True)
class Label:
    """The words of a result beside its line."""

    rect: Rect
    runs: tuple[Run, ...]

    def moved(self, dx: float, dy: float, scale: float = 1) -> "Label":
        """Scale about the origin, then shift."""
        return Label(self.rect.moved(dx, dy, scale),
                     tuple(run.moved(dx, dy, scale) for run in self.runs))  # fmt: skip


Part = Box | Line | Label


@dataclass(frozen=True, slots=True)
class Chart:
    """Everything on one sheet, or the whole chart of a page, in reading order."""

    title: str
    description: str
    width: float
    height: float
    text_size: float  # of the words in the boxes
    small_size: float  # of labels and conditions: the smallest words on the chart
    parts: tuple[Part, ...]
    cuts: tuple[float, ...] = ()  # heights at which it may be cut without cutting a symbol

    @property
    def boxes(self) -> tuple[Box, ...]:
        """The symbols, in reading order."""
        return tuple(part for part in self.parts if isinstance(part, Box))

    @property
    def lines(self) -> tuple[Line, ...]:
        """The lines between symbols."""
        return tuple(part for part in self.parts if isinstance(part, Line))

    @property
    def labels(self) -> tuple[Label, ...]:
        """The words beside lines."""
        return tuple(part for part in self.parts if isinstance(part, Label))

    def moved(self, dx: float, dy: float, scale: float = 1) -> "Chart":
        """Scale about the origin, then shift; the size grows by the shift."""
        return replace(
            self,
            width=self.width * scale + dx,
            height=self.height * scale + dy,
            text_size=self.text_size * scale,
            small_size=self.small_size * scale,
            parts=moved(self.parts, dx, dy, scale),
            cuts=tuple(cut * scale + dy for cut in self.cuts),
        )


def moved(parts: Iterable[Part], dx: float, dy: float, scale: float = 1) -> tuple[Part, ...]:
    """Scale parts about the origin, then shift them."""
    return tuple(part.moved(dx, dy, scale) for part in parts)
