"""Symbols with their words put in place.

In: measured words and a rectangle. Out: the `Box` and `Label` values of a chart.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import groupby, zip_longest

from builder.chart.chart import Box, Label, Rect, Run, Shape
from builder.chart.flow import Edge, Node
from builder.chart.flow_metrics import FlowMetrics, connector_width, sheet_reference
from builder.chart.measured_word import WordLine, line_width, measured_words
from builder.chart.spacing import PAD_Y, SIGNAL_GAP, SMALL
from builder.chart.text_block import FLAGGED, TextBlock, box_text, broken_lines, is_bar, line_height
from builder.wording.labels import STEP_LABELS

SHAPES = {
    "start": Shape.TERMINATOR,
    "check": Shape.PROCESS,
    "action": Shape.PROCESS,
    "fix": Shape.TERMINATOR,
    "stop": Shape.TERMINATOR,
    "handoff": Shape.PREDEFINED,
    "run": Shape.PREDEFINED,
    "return": Shape.TERMINATOR,
}
BASELINE = 0.76  # from the top of a line to its baseline, as a share of the line's height
HALF = 4.0  # half the width of the small diamond


@dataclass(frozen=True, slots=True)
class Pen:
    """What drawing needs to know beside the place: the words, and which step is on which sheet."""

    metrics: FlowMetrics
    sheets: Mapping[str, int] = field(default_factory=dict)  # of each step
    numbers: Mapping[str, int] = field(default_factory=dict)  # the same, by the step's number
    sheet: int = 1
    tops: frozenset[str] = frozenset()  # steps at the head of a column, reached by a connector

    def sheet_of(self, number: str) -> str:
        """Name the sheet of a step where it is not this one."""
        sheet = self.numbers.get(number, self.sheet)
        return sheet_reference(sheet) if sheet != self.sheet else ""


def box_part(pen: Pen, name: str, rect: Rect, result: Edge | None = None) -> Box:
    """Put a node and its words in place; first the result it is drawn inside of."""
    node, pad = pen.metrics.flow.nodes[name], pen.metrics.pads[name]
    words = box_text(node, pen.sheet_of, result)
    lines = broken_lines(words, rect.width - 2 * pad)
    if node.kind == "start":
        rect = Rect(rect.x, rect.y, min(rect.width, _widest(lines) + 2 * pad), rect.height)
    return Box(
        id=name,
        kind=node.kind,
        shape=SHAPES[node.kind],
        rect=rect,
        runs=tuple(_runs(lines, rect.x + pad, rect.y + PAD_Y)),
        panel=_panel(lines) if node.caution else 0,
        signal=node.caution or "",
        href=node.href,
        number=node.number,
        name=_spoken(node, result),
        change=node.change.partition(":")[0].lower(),
        arrival=node.led_to
        or (node.kind in FLAGGED and (name in pen.metrics.flow.arrivals or name in pen.tops)),
    )


def _spoken(node: Node, result: Edge | None) -> str:
    if result:
        label = f"{result.label}, {result.change}" if result.change else result.label
        return f"{label}: {_spoken(node, None)}"
    change = f"{node.change}." if node.change else ""
    label = STEP_LABELS.get(node.kind, "")
    words = " ".join(filter(None, (change, label, node.number, node.text)))
    return f"{node.caution}, {', '.join(node.hazards)}: {words}" if node.caution else words


def connector_part(pen: Pen, target: str, rect: Rect) -> Box:
    """Put a connector that bears the number of the step it goes on at, and its sheet."""
    node = pen.metrics.flow.nodes[target]
    line = measured_words(node.number or "?", SMALL, True, "number")
    sheet = pen.sheets.get(target, pen.sheet)
    if sheet != pen.sheet:
        line += measured_words(sheet_reference(sheet), SMALL, tone="small")
    wide = line_width(line)
    rect = Rect(rect.x, rect.y, connector_width(line), rect.height)
    x = rect.x + (rect.width - wide) / 2
    y = rect.y + (rect.height - line_height(line)) / 2
    return Box(
        id=target,
        kind="connector",
        shape=Shape.CONNECTOR,
        rect=rect,
        runs=tuple(_runs([line], x, y)),
        href=node.href,
        number=node.number,
        name=f"Go to step {node.number}: {node.text}",
    )


def diamond(name: str, x: float, y: float) -> Box:
    """Put the small diamond from which the results of a check leave; it touches the box."""
    place = Rect(x - HALF, y - HALF, 2 * HALF, 2 * HALF)
    return Box(id=name, kind="decision", shape=Shape.DECISION, rect=place)


def label_part(words: TextBlock, room: float, x: float, y: float) -> Label | None:
    """Put the words of a result beside its line; None if it has none."""
    if not words.paragraphs:
        return None
    lines = broken_lines(words, room)
    rect = Rect(x, y, _widest(lines), words.height(room))
    return Label(rect, tuple(_runs(lines, x, y)))


def _widest(lines: Sequence[WordLine]) -> float:
    return max([line_width(line) for line in lines])


def _panel(lines: Sequence[WordLine]) -> float:
    """Return the height of the ground of a bar."""
    return sum([line_height(line) for line in lines if is_bar(line)]) + PAD_Y


def _runs(lines: Sequence[WordLine], x: float, y: float) -> Iterator[Run]:
    """Yield lines of words in place, neighbors of one look joined to one run."""
    for line, after in zip_longest(lines, lines[1:]):
        bar = is_bar(line)
        rise = PAD_Y / 2 if bar else 0
        at = x - line[0].space
        for (size, bold, tone), alike in groupby(line, key=lambda word: word[2:5]):
            words = list(alike)
            text = "".join([" " * (w.space > 0) + w.text for w in words]).removeprefix(" ")
            at += words[0].space
            wide = line_width(words)
            yield Run(text, at, y + BASELINE * line_height(line) - rise, size, bold, wide, tone)
            at += wide
        y += line_height(line) + (SIGNAL_GAP if bar and not (after and is_bar(after)) else 0)
