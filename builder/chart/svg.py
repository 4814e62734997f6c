"""A chart as inline SVG for a page.

In: a `Chart`. Out: SVG text without a color or a script of its own: `chart.css` gives the looks,
light and dark. Every box is a link with a name, in reading order.

A chart of one column is cut between its blocks into one picture each, so that the page can set them
in as many columns as it has room for; nothing is drawn twice, and the order never changes.
"""

from collections.abc import Callable, Iterator
from html import escape
from itertools import pairwise

from builder.chart.chart import Box, Chart, Part, Polyline, Rect, Run, Shape
from builder.chart.spacing import (
    BADGE,
    BAR,
    BAR_GAP,
    DOUBLE_SIDE,
    EDGE,
    FLAG,
    ROUND,
    TAG_SIDE,
)
from builder.chart.text_block import CHANGE

HEAD = 5.0  # length of an arrow head


def in_page(href: str) -> str:
    """Keep a link within the page, drop one to another tree."""
    return href if href.startswith("#") else ""


def svg(chart: Chart, link: Callable[[str], str] = in_page, anchor: str = "box-") -> str:
    """Draw a chart; its pictures scale with the width they are given.

    `link` turns where a box leads (`#step-<id>`, `tree:<tree>#<step>`) into an address of the page,
    or into "" if there is none. The first symbol of a step has the id `box-<id>`, or another
    `anchor` before the step where a page has several charts.
    """
    anchors: dict[str, Box] = {}
    for box in chart.boxes:
        if box.href.startswith("#") and box.shape is not Shape.CONNECTOR:
            anchors.setdefault(box.id, box)

    def drawn(part: Part) -> str:
        if isinstance(part, Box):
            own = f"{anchor}{part.id}" if anchors.get(part.id) is part else ""
            return _box(part, link(part.href), own)
        return _line(part) if isinstance(part, Polyline) else "".join(map(_run, part.runs))

    name = escape(f"Chart: {chart.title}")
    words = f"<title>{name}</title><desc>{escape(chart.description)}</desc>"
    pictures = []
    for top, bottom, parts in _slices(chart):
        place = Rect(0, top, chart.width, bottom - top)
        pictures.append(_picture(place, chart.scale, words + "".join(map(drawn, parts))))
        words = ""
    return f'<div class="chart" role="group" aria-label="{name}">{"".join(pictures)}</div>'


def _slices(chart: Chart) -> Iterator[tuple[float, float, list[Part]]]:
    """Yield top, bottom and parts of each picture; what begins above a cut belongs above it."""
    edges = [0.0, *(cut - EDGE for cut in chart.cuts[1:]), chart.height]
    tops = [(_top(part), part) for part in chart.parts]
    for top, bottom in pairwise(edges):
        yield top, bottom, [part for y, part in tops if top <= y < bottom]


def _top(part: Part) -> float:
    if isinstance(part, Polyline):
        return min(y for _, y in part.points)
    return part.rect.y


def _picture(place: Rect, scale: float, drawn: str) -> str:
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 {_n(place.y)} {_n(place.width)} '
        f'{_n(place.height)}" width="{_n(place.width * scale)}" '
        f'height="{_n(place.height * scale)}">{drawn}</svg>'
    )


def _box(box: Box, href: str, anchor: str) -> str:
    drawn = _symbol(box) + _panel(box) + "".join(_flag(box)) + "".join(map(_run, box.runs))
    drawn += "".join(_change_bars(box))
    kind = f"box {box.kind}" + (" arrival" if box.arrival else "")
    own = f' id="{escape(anchor)}"' if anchor else ""
    if not href:
        return f'<g class="{kind}"{own}>{drawn}</g>'
    name = escape(box.name)
    return f'<a class="{kind}"{own} href="{escape(href)}" aria-label="{name}">{drawn}</a>'


def _symbol(box: Box) -> str:
    r = box.rect
    match box.shape:
        case Shape.DECISION:
            x, y = r.x + r.width / 2, r.y + r.height / 2
            return _path([(r.x, y), (x, r.y), (r.right, y), (x, r.bottom)], "symbol")
        case Shape.TERMINATOR:
            return _rect(r, "symbol", min(r.height / 2, ROUND))
        case Shape.CONNECTOR:
            return _rect(r, "symbol", r.height / 2)
        case Shape.PREDEFINED:
            return _rect(r, "symbol") + "".join(
                f'<path class="symbol" d="M{_n(x)} {_n(r.y)}V{_n(r.bottom)}"/>'
                for x in (r.x + DOUBLE_SIDE, r.right - DOUBLE_SIDE)
            )
        case _:
            return _rect(r, "symbol")


def _panel(box: Box) -> str:
    if not box.panel:
        return ""
    r, kind = box.rect, f"panel {box.signal.lower()}"
    if box.shape is not Shape.TERMINATOR:
        return _rect(Rect(r.x, r.y, r.width, box.panel), kind)
    end = min(r.height / 2, ROUND)
    return (
        f'<path class="{kind}" d="M{_n(r.x)} {_n(r.y + box.panel)}v{_n(end - box.panel)}'
        f"a{_n(end)} {_n(end)} 0 0 1 {_n(end)} {_n(-end)}h{_n(r.width - 2 * end)}"
        f'a{_n(end)} {_n(end)} 0 0 1 {_n(end)} {_n(end)}v{_n(box.panel - end)}z"/>'
    )


def _flag(box: Box) -> Iterator[str]:
    """Yield the dark ground of a number that connectors lead to."""
    for run in box.runs if box.arrival and box.kind != "connector" else ():
        if run.tone == "number":
            high = 1.1 * run.size
            wide = run.width - FLAG + 2 * BADGE
            place = Rect(run.x - BADGE, run.y - 0.9 * run.size, wide, high)
            yield _rect(place, "flag", 3.5)


def _change_bars(box: Box) -> Iterator[str]:
    """Yield the bars at the right of a box that a review marks: one, and two where it's new."""
    r = box.rect
    for bar in range(2 if box.change == "new" else bool(box.change)):
        x = r.right + BAR_GAP + bar * (BAR + BAR_GAP)
        yield _rect(Rect(x, r.y, BAR, r.height), "bar")


def _rect(r: Rect, kind: str, round_end: float = 0) -> str:
    rx = f' rx="{_n(round_end)}"' if round_end else ""
    return (
        f'<rect class="{kind}" x="{_n(r.x)}" y="{_n(r.y)}" width="{_n(r.width)}" '
        f'height="{_n(r.height)}"{rx}/>'
    )


def _path(points: list[tuple[float, float]], kind: str) -> str:
    steps = "L".join(f"{_n(x)} {_n(y)}" for x, y in points)
    return f'<path class="{kind}" d="M{steps}Z"/>'


def _run(run: Run) -> str:
    kind = " ".join(filter(None, ("bold" if run.bold else "", run.tone)))
    kind = f' class="{kind}"' if kind else ""
    words = escape(run.text, quote=False)
    ground = _tag(run) if run.tone == CHANGE else ""
    return f'{ground}<text x="{_n(run.x)}" y="{_n(run.y)}"{kind}>{words}</text>'


def _tag(run: Run) -> str:
    """Draw the dark ground of what a review says."""
    wide = run.width + 2 * TAG_SIDE
    place = Rect(run.x - TAG_SIDE, run.y - 0.95 * run.size, wide, 1.25 * run.size)
    return _rect(place, "tag")


def _line(line: Polyline) -> str:
    points = "L".join(f"{_n(x)} {_n(y)}" for x, y in line.points)
    drawn = f'<path class="{"rule" if line.rule else "line"}" d="M{points}"/>'
    return drawn + (_path(arrow_head(line), "head") if line.arrow else "")


def arrow_head(line: Polyline, size: float = HEAD) -> list[tuple[float, float]]:
    """Return the triangle at the end of a line."""
    (x1, y1), (x2, y2) = line.points[-2:]
    length = abs(x2 - x1) + abs(y2 - y1)
    dx, dy = (x2 - x1) / length * size, (y2 - y1) / length * size
    return [(x2, y2), (x2 - dx - dy / 2, y2 - dy + dx / 2), (x2 - dx + dy / 2, y2 - dy - dx / 2)]


def _n(value: float) -> str:
    return f"{value:.1f}".removesuffix(".0")
