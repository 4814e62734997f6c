"""A chart as inline SVG for a page.

In: a `Chart`. Out: SVG text without a colour or a script of its own: `chart.css` gives the looks,
light and dark. Every box is a link with a name, in reading order.
"""

from collections.abc import Iterator
from html import escape

from builder.chart.chart import Box, Chart, Label, Line, Rect, Run, Shape
from builder.chart.gaps import DOUBLE_SIDE, ROUND

HEAD = 5.0  # length of an arrow head
_OWN = (Shape.PROCESS, Shape.TERMINATOR)  # the symbols that stand for a step itself


def svg(chart: Chart) -> str:
    """Draw a chart; it scales with the width it is given."""
    name = escape(chart.title)
    opening = (
        f'<svg class="chart" xmlns="http://www.w3.org/2000/svg" role="group" aria-label="{name}" '
        f'viewBox="0 0 {_n(chart.width)} {_n(chart.height)}" '
        f'width="{_n(chart.width * chart.scale)}" height="{_n(chart.height * chart.scale)}">'
    )
    words = f"<title>{name}</title><desc>{escape(chart.description)}</desc>"
    return opening + words + "".join(_parts(chart)) + "</svg>"


def _parts(chart: Chart) -> Iterator[str]:
    named: set[str] = set()  # a step's first symbol can be linked to; repeats of it cannot
    for part in chart.parts:
        match part:
            case Box():
                own = part.shape in _OWN and part.id not in named
                if own:
                    named.add(part.id)
                yield _box(part, f"box-{part.id}" if own else "")
            case Line():
                yield _line(part)
            case Label():
                yield "".join(map(_run, part.runs))


def _box(box: Box, anchor: str) -> str:
    drawn = _symbol(box) + _panel(box) + "".join(_flag(box)) + "".join(map(_run, box.runs))
    kind = f"box {box.kind}" + (" arrival" if box.arrival else "")
    if not box.href:
        return f'<g class="{kind}">{drawn}</g>'
    name, href = escape(box.name), escape(box.href)
    id_ = f' id="{escape(anchor)}"' if anchor else ""
    return f'<a class="{kind}"{id_} href="{href}" aria-label="{name}">{drawn}</a>'


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
    place = Rect(box.rect.x, box.rect.y, box.rect.width, box.panel)
    return _rect(place, f"panel {box.signal.lower()}") if box.panel else ""


def _flag(box: Box) -> Iterator[str]:
    """Yield the dark ground of a number that connectors lead to."""
    for run in box.runs if box.arrival and box.kind != "connector" else ():
        if run.tone == "number":
            high = 1.08 * run.size
            place = Rect(run.x - 0.5, run.y - 0.88 * run.size, run.width - 1, high)
            yield _rect(place, "flag", 3.5)


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
    return (
        f'<text x="{_n(run.x)}" y="{_n(run.y)}" font-size="{_n(run.size)}"'
        + (f' class="{kind}"' if kind else "")
        + f">{escape(run.text, quote=False)}</text>"
    )


def _line(line: Line) -> str:
    points = "L".join(f"{_n(x)} {_n(y)}" for x, y in line.points)
    drawn = f'<path class="line" d="M{points}"/>'
    return drawn + (_path(arrow_head(line), "head") if line.arrow else "")


def arrow_head(line: Line, size: float = HEAD) -> list[tuple[float, float]]:
    """Return the triangle at the end of a line."""
    (x1, y1), (x2, y2) = line.points[-2:]
    length = abs(x2 - x1) + abs(y2 - y1) or 1
    dx, dy = (x2 - x1) / length * size, (y2 - y1) / length * size
    return [(x2, y2), (x2 - dx - dy / 2, y2 - dy + dx / 2), (x2 - dx + dy / 2, y2 - dy - dx / 2)]


def _n(value: float) -> str:
    return f"{value:.1f}".removesuffix(".0")
