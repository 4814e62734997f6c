"""What must not be seen on a chart, found by geometry.

In: a `Chart`. Out: a `Faults` count of crossings, overlaps, lines through boxes, labels on lines,
words that stand out of their box, parts that stand out of the chart.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations, pairwise

from builder.chart.chart import Box, Chart, Rect, Run, Shape
from builder.chart.fonts import bold, medium

Point = tuple[float, float]
Segment = tuple[Point, Point]
TOUCH = 0.25  # nearer than this is touching, which is allowed


@dataclass(frozen=True)
class Faults:
    """Counts; all of them 0 on a sound chart."""

    crossings: int
    overlaps: int  # box on box, label on box, label on label
    through: int  # line through a box
    on_line: int  # label on a line
    out: int  # words out of their box, parts out of the chart

    def __add__(self, other: "Faults") -> "Faults":
        """Add up two charts."""
        return Faults(
            self.crossings + other.crossings,
            self.overlaps + other.overlaps,
            self.through + other.through,
            self.on_line + other.on_line,
            self.out + other.out,
        )


NONE = Faults(0, 0, 0, 0, 0)


def faults(chart: Chart) -> Faults:
    """Count everything that is wrong with a chart."""
    boxes = [box for box in chart.boxes if box.shape is not Shape.DECISION]
    places = [shrunk(box.rect) for box in boxes]
    labels = [shrunk(label.rect) for label in chart.labels]
    lines = [list(pairwise(line.points)) for line in chart.lines]
    segments = [segment for line in lines for segment in line]
    return Faults(
        crossings=sum(cross(a, b) for one, two in combinations(lines, 2) for a in one for b in two),
        overlaps=sum(overlap(a, b) for a, b in combinations([*places, *labels], 2)),
        through=sum(runs_through(segment, place) for place in places for segment in segments),
        on_line=sum(runs_through(segment, place) for place in labels for segment in segments),
        out=sum(_out(chart, boxes)),
    )


def _out(chart: Chart, boxes: list[Box]) -> Iterator[int]:
    whole = Rect(0, 0, chart.width, chart.height)
    for part in [*boxes, *chart.labels]:
        yield not holds(whole, part.rect)
        for run in part.runs:
            yield not holds(part.rect, run_place(run))
    for line in chart.lines:
        for x, y in line.points:
            yield not holds(whole, Rect(x, y, 0, 0))


def run_place(run: Run) -> Rect:
    """Where words stand: the width of their face, capitals and descenders."""
    face = bold() if run.bold else medium()
    up = face.capital * run.size
    return Rect(run.x, run.y - up, face.width(run.text, run.size), up + 0.15 * run.size)


def holds(outer: Rect, inner: Rect) -> bool:
    """Whether one place holds another."""
    return (
        outer.x - TOUCH <= inner.x
        and outer.y - TOUCH <= inner.y
        and inner.right <= outer.right + TOUCH
        and inner.bottom <= outer.bottom + TOUCH
    )


def shrunk(place: Rect) -> Rect:
    """A place less the rim in which touching is allowed."""
    return Rect(place.x + TOUCH, place.y + TOUCH, place.width - 2 * TOUCH,
                place.height - 2 * TOUCH)  # fmt: skip


def overlap(a: Rect, b: Rect) -> bool:
    """Whether two places share more than a rim."""
    return a.x < b.right and b.x < a.right and a.y < b.bottom and b.y < a.bottom


def runs_through(segment: Segment, place: Rect) -> bool:
    """Whether a segment enters a place (Liang and Barsky's clipping, from memory)."""
    (x1, y1), (x2, y2) = segment
    dx, dy = x2 - x1, y2 - y1
    start, end = 0.0, 1.0
    for delta, near, far in (
        (dx, place.x - x1, place.right - x1),
        (dy, place.y - y1, place.bottom - y1),
    ):
        if delta == 0:
            if near >= 0 or far <= 0:
                return False
            continue
        first, second = sorted((near / delta, far / delta))
        start, end = max(start, first), min(end, second)
    return start < end


def cross(a: Segment, b: Segment) -> bool:
    """Whether two segments cross in their inner parts; touching and lying on one another do not."""
    return _sides(a, b) and _sides(b, a)


def _sides(line: Segment, other: Segment) -> bool:
    (x1, y1), (x2, y2) = line
    sides = [(x2 - x1) * (y - y1) - (y2 - y1) * (x - x1) for x, y in other]
    return min(sides) < -TOUCH and max(sides) > TOUCH
