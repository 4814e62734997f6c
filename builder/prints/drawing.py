"""A chart drawn on a sheet of paper.

In: a `Chart` and a canvas whose origin stands at the chart's top left corner, y upwards. Out: marks
on the canvas. Nothing is told by colour alone: shapes, borders and words tell the same.
"""

from collections.abc import Iterable, Sequence

from reportlab.lib.colors import Color, HexColor, black, white
from reportlab.pdfgen.canvas import Canvas

from builder.chart.chart import Box, Chart, Label, Line, Run, Shape
from builder.chart.fonts import bold, medium
from builder.chart.gaps import DOUBLE_SIDE, FLAG, ROUND
from builder.chart.svg import arrow_head

INK = HexColor("#14181c")
QUIET = HexColor("#40474d")
GROUNDS = {
    "fix": HexColor("#e3f0e6"),
    "stop": HexColor("#ececf0"),
    "action": HexColor("#f4f5f7"),
    "decision": INK,
}
# Colours near those of ANSI Z535.1 and the ink that reads on them.
SIGNALS: dict[str, tuple[Color, Color]] = {
    "DANGER": (HexColor("#c8102e"), white),
    "WARNING": (HexColor("#ff8200"), black),
    "CAUTION": (HexColor("#ffd100"), black),
    "NOTICE": (HexColor("#003da5"), white),
}
THIN, HEAVY = 0.9, 1.7


def draw_chart(canvas: Canvas, chart: Chart) -> None:
    """Draw a chart; lines first, so that boxes stand on them."""
    canvas.saveState()
    canvas.scale(chart.scale, chart.scale)
    canvas.setStrokeColor(INK)
    for line in chart.lines:
        _line(canvas, line)
    for part in chart.parts:
        if isinstance(part, Box):
            _box(canvas, part)
        elif isinstance(part, Label):
            draw_runs(canvas, part.runs)
    canvas.restoreState()


def _line(canvas: Canvas, line: Line) -> None:
    canvas.setLineWidth(THIN)
    _polygon(canvas, line.points, closed=False)
    if line.arrow:
        canvas.setFillColor(INK)
        _polygon(canvas, arrow_head(line))


def _polygon(canvas: Canvas, points: Sequence[tuple[float, float]], closed: bool = True) -> None:
    path = canvas.beginPath()
    (x, y), *rest = points
    path.moveTo(x, -y)
    for x, y in rest:
        path.lineTo(x, -y)
    if closed:
        path.close()
    canvas.drawPath(path, stroke=0 if closed else 1, fill=1 if closed else 0)


def _box(canvas: Canvas, box: Box) -> None:
    heavy = box.kind in ("fix", "stop")
    canvas.setLineWidth(HEAVY if heavy else THIN)
    canvas.setDash(*((4, 2.5),) if box.kind == "stop" else ())
    canvas.setFillColor(GROUNDS.get(box.kind, white))
    _symbol(canvas, box)
    canvas.setDash()
    if box.panel:
        _panel(canvas, box)
    draw_runs(canvas, box.runs, box)


def _symbol(canvas: Canvas, box: Box) -> None:
    r = box.rect
    if box.shape is Shape.DECISION:
        x, y = r.x + r.width / 2, r.y + r.height / 2
        _polygon(canvas, [(r.x, y), (x, r.y), (r.right, y), (x, r.bottom)])
        return
    ends = {Shape.TERMINATOR: ROUND, Shape.CONNECTOR: r.height / 2}.get(box.shape, 0)
    canvas.roundRect(r.x, -r.bottom, r.width, r.height, min(ends, r.height / 2), stroke=1, fill=1)
    if box.shape is Shape.PREDEFINED:
        for x in (r.x + DOUBLE_SIDE, r.right - DOUBLE_SIDE):
            canvas.line(x, -r.bottom, x, -r.y)


def _panel(canvas: Canvas, box: Box) -> None:
    ground, _ = SIGNALS[box.signal]
    canvas.setFillColor(ground)
    canvas.rect(box.rect.x, -box.rect.y - box.panel, box.rect.width, box.panel, stroke=1, fill=1)


def draw_runs(canvas: Canvas, runs: Iterable[Run], box: Box | None = None) -> None:
    """Draw words; the number of a box that connectors lead to stands white on dark."""
    for run in runs:
        x = run.x
        ink = QUIET if run.tone == "small" else INK
        if run.tone.upper() in SIGNALS:
            ink = SIGNALS[run.tone.upper()][1]
        if run.tone == "number" and box and box.arrival and box.kind != "connector":
            _flag(canvas, run)
            ink, x = white, run.x + FLAG / 2 - 1
        canvas.setFillColor(ink)
        canvas.setFont((bold() if run.bold else medium()).name, run.size)
        canvas.drawString(x, -run.y, run.text)


def _flag(canvas: Canvas, run: Run) -> None:
    canvas.setFillColor(INK)
    top = run.y - 0.88 * run.size
    high = 1.08 * run.size
    canvas.roundRect(run.x - 0.5, -top - high, run.width - 1, high, 3.5, stroke=0, fill=1)
