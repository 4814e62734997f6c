"""Symbols with their words put in place.

In: broken lines and a rectangle. Out: the `Box` and `Label` values of a chart.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from builder.chart.chart import Box, Label, Rect, Run, Shape
from builder.chart.fonts import LEADING
from builder.chart.gaps import PAD_Y, SMALL
from builder.chart.measure import Broken, Word, line_width, width, words_of
from builder.chart.stock import Stock

SHAPES = {
    "start": Shape.TERMINATOR,
    "check": Shape.PROCESS,
    "action": Shape.PROCESS,
    "fix": Shape.TERMINATOR,
    "stop": Shape.TERMINATOR,
    "hand-over": Shape.PREDEFINED,
}
KINDS = {
    "start": "Start",
    "check": "Check",
    "action": "Do",
    "fix": "Fix",
    "stop": "Stop",
    "hand-over": "Other tree",
}


@dataclass(frozen=True, slots=True)
class Pen:
    """What drawing needs to know beside the place: the words, and which step is on which sheet."""

    stock: Stock
    sheets: Mapping[str, int] = field(default_factory=dict)  # {}: all is on one sheet
    sheet: int = 1
    tops: frozenset[str] = frozenset()  # steps at the head of a column, reached by a connector


BASELINE = 0.92  # from the top of a line to its baseline, in ems
HALF = 4.0  # half the width of the small diamond


def box_part(pen: Pen, name: str, lines: Broken, rect: Rect) -> Box:
    """Put a node and its words in place."""
    stock = pen.stock
    node = stock.flow.nodes[name]
    if node.kind == "start":
        rect = replace(rect, width=min(rect.width, width(lines) + 2 * stock.pad(name)))
    runs = text_runs(lines, rect.x + stock.pad(name), rect.y + PAD_Y)
    panel = None
    if node.caution:
        first = LEADING * SMALL
        panel = Rect(rect.x, rect.y, rect.width, first + PAD_Y)
    words = " ".join(filter(None, (node.number, node.text)))
    return Box(
        id=name,
        kind=node.kind,
        shape=SHAPES[node.kind],
        rect=rect,
        runs=runs,
        panel=panel,
        signal=node.caution or "",
        href=node.href,
        name=f"{KINDS[node.kind]} {words}" + (f" ({node.caution})" if node.caution else ""),
        arrival=name in stock.flow.arrivals or name in pen.tops,
    )


def connector_part(pen: Pen, target: str, rect: Rect) -> Box:
    """Put a connector that bears the number of the step it goes on at, and its sheet."""
    node = pen.stock.flow.nodes[target]
    words = words_of(node.number or "?", SMALL, True, "number")
    sheet = pen.sheets.get(target, pen.sheet)
    if sheet != pen.sheet:
        words += words_of(f"sheet {sheet}", SMALL, False, "small")
    line = list(words)
    x = rect.x + (rect.width - line_width(line)) / 2
    y = rect.y + rect.height / 2 + (0.35 - BASELINE) * SMALL
    return Box(
        id=target,
        kind="connector",
        shape=Shape.CONNECTOR,
        rect=rect,
        runs=text_runs([line], x, y),
        href=node.href,
        name=f"Go to step {node.number}: {node.text}",
    )


def diamond(name: str, x: float, y: float) -> Box:
    """Put the small diamond from which the results of a check leave."""
    return Box(
        id=name,
        kind="decision",
        shape=Shape.DECISION,
        rect=Rect(x - HALF, y - HALF, 2 * HALF, 2 * HALF),
    )


def label_part(lines: Broken, x: float, y: float, high: float) -> Label:
    """Put the words of a result beside its line."""
    return Label(Rect(x, y, width(lines), high), text_runs(lines, x, y))


def text_runs(lines: Broken, x: float, y: float) -> tuple[Run, ...]:
    """Put lines of words in place, words of one look joined to one run."""
    runs: list[Run] = []
    for line in lines:
        baseline = y + BASELINE * line[0].size
        at = x
        for words in _alike(line):
            if words[0] is not line[0]:
                at += words[0].space
            text = " ".join(word.text for word in words)
            wide = line_width(words)
            first = words[0]
            runs.append(Run(text, at, baseline, first.size, first.bold, wide, first.tone))
            at += wide
        y += LEADING * line[0].size
    return tuple(runs)


def _alike(line: list[Word]) -> list[list[Word]]:
    groups: list[list[Word]] = []
    for word in line:
        last = groups[-1][-1] if groups else None
        if last and (last.size, last.bold, last.tone) == (word.size, word.bold, word.tone):
            groups[-1].append(word)
        else:
            groups.append([word])
    return groups
