"""Symbols with their words put in place.

In: broken lines and a rectangle. Out: the `Box` and `Label` values of a chart.
"""

from builder.chart.chart import Box, Label, Rect, Run, Shape
from builder.chart.fonts import LEADING
from builder.chart.measure import PAD_Y, SMALL, Broken, Word, line_width, width, words_of
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
BASELINE = 0.92  # from the top of a line to its baseline, in ems
HALF = 4.0  # half the width of the small diamond


def box_part(stock: Stock, name: str, lines: Broken, rect: Rect) -> Box:
    """Put a node and its words in place."""
    node = stock.flow.nodes[name]
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
        arrival=name in stock.flow.arrivals,
    )


def connector_part(stock: Stock, target: str, rect: Rect) -> Box:
    """Put a connector that bears the number of the step it goes on at."""
    node = stock.flow.nodes[target]
    (word,) = words_of(node.number or "?", SMALL, True, "number")
    x = rect.x + (rect.width - word.width) / 2
    y = rect.y + rect.height / 2 + 0.35 * SMALL
    return Box(
        id=target,
        kind="connector",
        shape=Shape.CONNECTOR,
        rect=rect,
        runs=(Run(word.text, x, y, SMALL, True, word.width, "number"),),
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
