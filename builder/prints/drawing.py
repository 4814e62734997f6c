"""A chart drawn on a sheet of paper.

In: a `Chart` and a canvas whose origin stands at the chart's top left corner, y upwards. Out: marks
on the canvas. Nothing is told by color alone: shapes, borders and words tell the same.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from reportlab.lib.colors import Color, HexColor, black, white
from reportlab.pdfgen.canvas import Canvas

from builder.chart.chart import Box, Chart, Label, Polyline, Rect, Run, Shape
from builder.chart.fonts import bold, medium
from builder.chart.hazard_bar import MARK, MARK_HEIGHT, mark_width
from builder.chart.hazard_marks import HIGH, mark_polygons
from builder.chart.spacing import BADGE, DOUBLE_SIDE, FLAG, ROUND
from builder.chart.svg import arrow_head

INK = HexColor("#14181c")
QUIET = HexColor("#40474d")
GROUNDS = {
    "fix": HexColor("#e3f0e6"),
    "stop": HexColor("#ececf0"),
    "action": HexColor("#f4f5f7"),
    "decision": INK,
}
# Colors near those of ANSI Z535.1 and the ink that reads on them.
SIGNAL_COLORS: dict[str, tuple[Color, Color]] = {
    "DANGER": (HexColor("#c8102e"), white),
    "WARNING": (HexColor("#ff8200"), black),
    "CAUTION": (HexColor("#ffd100"), black),
    "NOTICE": (HexColor("#003da5"), white),
}
SIGN_GROUND = HexColor("#ffe14d")
FINE, THIN, HEAVY = 0.4, 0.9, 1.7


@dataclass(frozen=True, slots=True)
class ChartLinks:
    """Where the boxes of a chart lead."""

    root: str  # address of the site, without a slash at its end
    page: str  # address of the tree's page
    prefix: str  # of the names of places in the file


def draw_chart(canvas: Canvas, chart: Chart, links: ChartLinks | None = None) -> None:
    """Draw a chart; lines first, so that boxes stand on them."""
    canvas.saveState()
    canvas.scale(chart.scale, chart.scale)
    canvas.setStrokeColor(INK)
    for line in chart.lines:
        _line(canvas, line)
    for part in chart.parts:
        if isinstance(part, Box):
            _box(canvas, part)
            if links:
                _link(canvas, part, links)
        elif isinstance(part, Label):
            draw_runs(canvas, part.runs)
    canvas.restoreState()


def _link(canvas: Canvas, box: Box, links: ChartLinks) -> None:
    """Let a step lead to its place on the page, and a connector to the step it names."""
    place = (box.rect.x, -box.rect.bottom, box.rect.right, -box.rect.y)
    if box.kind not in ("connector", "decision"):
        canvas.bookmarkHorizontal(links.prefix + box.id, 0, 12 - box.rect.y)
    if box.kind == "connector":
        canvas.linkRect("", links.prefix + box.id, place, relative=1, thickness=0)
    elif box.href.startswith("#"):
        canvas.linkURL(links.page + box.href, place, relative=1, thickness=0)
    elif box.href:
        tree, _, step = box.href.removeprefix("tree:").partition("#")
        anchor = f"#step-{step}" if step else ""
        canvas.linkURL(f"{links.root}/trees/{tree}.html{anchor}", place, relative=1, thickness=0)


def _line(canvas: Canvas, line: Polyline) -> None:
    canvas.setLineWidth(FINE if line.rule else THIN)
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
    heavy = box.kind in ("fix", "stop", "return")
    canvas.setLineWidth(HEAVY if heavy else THIN)
    canvas.setDash(*((4, 2.5),) if box.kind == "stop" else ())
    canvas.setFillColor(GROUNDS.get(box.kind, white))
    _symbol(canvas, box)
    if box.panel:
        _panel(canvas, box)
    canvas.setDash()
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
    """Draw the ground of the signal word; where the box has rounded ends, so has it."""
    r, ends = box.rect, ROUND if box.shape is Shape.TERMINATOR else 0
    round_ = min(ends, r.height / 2)
    canvas.saveState()
    inside = canvas.beginPath()
    inside.roundRect(r.x, -r.bottom, r.width, r.height, round_)
    canvas.clipPath(inside, stroke=0, fill=0)
    canvas.setFillColor(SIGNAL_COLORS[box.signal][0])
    canvas.rect(r.x, -r.y - box.panel, r.width, box.panel, stroke=1, fill=1)
    canvas.restoreState()
    canvas.roundRect(r.x, -r.bottom, r.width, r.height, round_, stroke=1, fill=0)


def draw_runs(canvas: Canvas, runs: Iterable[Run], box: Box | None = None) -> None:
    """Draw words; the number of a box that connectors lead to stands white on dark."""
    for run in runs:
        shift = 0.0
        ink = QUIET if run.tone == "small" else INK
        if run.tone.upper() in SIGNAL_COLORS:
            ink = SIGNAL_COLORS[run.tone.upper()][1]
        if run.tone.startswith(MARK):
            draw_mark(canvas, run.tone.split()[1], run)
            shift = mark_width(run.size)
            if box and box.signal:  # the letter behind the sign
                ink = SIGNAL_COLORS[box.signal][1]
        if run.tone == "number" and box and box.arrival and box.kind != "connector":
            _flag(canvas, run)
            ink = white
        canvas.setFillColor(ink)
        canvas.setFont((bold() if run.bold else medium()).name, run.size)
        canvas.drawString(run.x + shift, -run.y, run.text)


def draw_mark(canvas: Canvas, picture: str, run: Run) -> None:
    """Draw the sign of a hazard at the place of a run, a little below its baseline."""
    scale = MARK_HEIGHT * run.size / HIGH
    x, y = run.x, -run.y - 0.12 * run.size + HIGH * scale
    for fill, polygon in mark_polygons(picture):
        canvas.setFillColor(INK if fill == "ink" else SIGN_GROUND)
        _polygon(canvas, [(x + px * scale, -y + py * scale) for px, py in polygon])


def _flag(canvas: Canvas, run: Run) -> None:
    canvas.setFillColor(INK)
    top, high = run.y - 0.9 * run.size, 1.1 * run.size
    wide = run.width - FLAG + 2 * BADGE
    canvas.roundRect(run.x - BADGE, -top - high, wide, high, 3.5, stroke=0, fill=1)


LEGEND_NUMBER = "8"
LEGEND: tuple[tuple[str, Shape, str], ...] = (
    ("check", Shape.PROCESS, "check or do"),
    ("decision", Shape.DECISION, "results leave here"),
    ("fix", Shape.TERMINATOR, "fix"),
    ("stop", Shape.TERMINATOR, "stop, no fix"),
    ("connector", Shape.CONNECTOR, f"go on at {LEGEND_NUMBER}"),
    ("badge", Shape.PROCESS, "go on here"),
    ("handoff", Shape.PREDEFINED, "procedure, tree"),
)
LEGEND_SIZE = 10.0
BESIDE, GAP = 3.0, 11.0  # from a symbol to its words, and from these to the next


def legend_width() -> float:
    """Width of the line that explains the symbols, in points."""
    return sum(
        _symbol_width(kind, shape) + BESIDE + medium().width(words, LEGEND_SIZE) + GAP
        for kind, shape, words in LEGEND
    )


def draw_legend(canvas: Canvas, x: float, y: float) -> None:
    """Explain the symbols in one line, centered on y; it is narrower than any paper."""
    canvas.saveState()
    canvas.translate(x, y)
    canvas.setStrokeColor(INK)
    at = 1.0
    for kind, shape, words in LEGEND:
        wide, high = _symbol_width(kind, shape), 8.0 if shape is Shape.DECISION else 12.0
        place = Rect(at, -high / 2, wide, high)
        if kind != "badge":
            _box(canvas, Box("", kind, shape, place))
        if kind in ("connector", "badge"):
            number = _legend_number(kind, at)
            draw_runs(canvas, [number], Box("", kind, shape, place, arrival=kind == "badge"))
        canvas.setFillColor(QUIET)
        canvas.setFont(medium().name, LEGEND_SIZE)
        canvas.drawString(at + wide + BESIDE, -3.5, words)
        at += wide + BESIDE + medium().width(words, LEGEND_SIZE) + GAP
    canvas.restoreState()


def _symbol_width(kind: str, shape: Shape) -> float:
    if kind == "badge":
        return bold().width(LEGEND_NUMBER, LEGEND_SIZE) + FLAG
    return 8.0 if shape is Shape.DECISION else 19.0


def _legend_number(kind: str, left: float) -> Run:
    """Return the number in a connector, or the same number where the connector leads."""
    wide = bold().width(LEGEND_NUMBER, LEGEND_SIZE)
    if kind == "badge":
        return Run(LEGEND_NUMBER, left + 1.5, 3.5, LEGEND_SIZE, True, wide + FLAG, "number")
    x = left + (_symbol_width(kind, Shape.CONNECTOR) - wide) / 2
    return Run(LEGEND_NUMBER, x, 3.5, LEGEND_SIZE, True, wide, "number")
