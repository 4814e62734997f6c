"""From a tree to the charts of a page and of sheets.

In: a `Tree` and, for paper, the room on each sheet. Out: `Chart`s.

On paper the text comes first: sheets are added rather than text made smaller. The style with the
results to the right is the plainest; the other is taken where its text is larger by more than 15 %,
or where it saves a sheet.
"""

from collections.abc import Iterator, Sequence

from builder.chart.chart import Chart, Part, Rect
from builder.chart.columns import Column, balanced, groups, pieces
from builder.chart.fit import Fit, Room, case, fewest_sheets, largest
from builder.chart.flow import Flow, flow_of
from builder.chart.gaps import COLUMN_GAP, EDGE, SECTION_GAP, SMALL, TEXT
from builder.chart.paint import Pen
from builder.chart.stock import Stock, stock
from builder.chart.styles import UNDER, Style, right_style
from builder.model.library import Library
from builder.model.tree import Tree

PAGE_WIDTH = 230.0  # of a column in the page, at the nominal text size
PAGE_SCALE = 1.6  # 16 px text
SHARES = (0.46, 0.54)  # of the width that the checks take, where results stand to the right
WORTH = 1.15  # how much larger the text must be for the less plain style
WISHED = 12.0  # points: least text of the boxes on paper; labels then are 10.8


def page_chart(tree: Tree, library: Library | None = None) -> Chart:
    """Lay a tree out in one column for the page."""
    return one_column(flow_of(tree, library)).moved(0, 0, PAGE_SCALE)


def one_column(flow: Flow) -> Chart:
    """Lay a flow out in one column, at the nominal text size."""
    measured = stock(flow)
    items = pieces(measured, UNDER, groups(flow.sections), PAGE_WIDTH)
    high = sum(piece.body + piece.tail + SECTION_GAP for piece in items)
    fit = Fit(UNDER, TEXT, 1, PAGE_WIDTH, (Column(tuple(items), high),))
    return drawn(measured, fit)[0]


def sheet_charts(flow: Flow, rooms: Sequence[Room], text: float = WISHED) -> tuple[Chart, ...]:
    """Lay a flow out on as few sheets as it takes with text no smaller than `text`.

    Each room is one way to use the paper (upright, lying); the one that takes the fewest sheets,
    then the one with the largest text, is taken. If a single box at that size is larger than a
    sheet, the largest text that fits is taken instead: ask the charts for theirs.
    """
    return drawn(*_best(flow, rooms, text))


def one_sheet(flow: Flow, room: Room, styles: Sequence[Style]) -> Chart:
    """Force a flow on one sheet, with the largest text that any of the styles allows."""
    measured = stock(flow)
    fits = [largest(case(measured, style, room), 1) for style in styles]
    return drawn(measured, max((fit for fit in fits if fit), key=lambda fit: fit.text))[0]


def chosen(fits: Sequence[Fit | None]) -> Fit | None:
    """Choose between layouts given in order of plainness.

    Fewer sheets come first; of equals the plainer one, unless its text is smaller by more than it
    is worth.
    """
    best: Fit | None = None
    for fit in fits:
        if fit and (best is None or (-fit.sheets, fit.text) > (-best.sheets, best.text * WORTH)):
            best = fit
    return best


def plain_style(measured: Stock) -> Style:
    """Results to the right, the checks with the share of the width that needs the least height."""
    joined = groups(measured.flow.sections)

    def height(style: Style) -> float:
        items = pieces(measured, style, joined, max(250.0, style.least(measured)))
        return sum(piece.body + piece.tail for piece in items)

    return min(map(right_style, SHARES), key=height)


def _best(flow: Flow, rooms: Sequence[Room], text: float) -> tuple[Stock, Fit]:
    one, more = stock(flow), stock(flow, sheets=True)
    found: list[tuple[Stock, Fit]] = []
    for room in rooms:
        for measured, most in ((one, 1), (more, 99)):
            fits = []
            for style in (plain_style(measured), UNDER):
                wanted = case(measured, style, room)
                few = fewest_sheets(wanted, text, most)
                fits.append(few and (largest(wanted, few.sheets, text) or few))
            best = chosen(fits)
            if best:
                found.append((measured, best))
                break
    if not found:
        return _largest_that_fits(more, rooms)
    return max(found, key=lambda pair: (-pair[1].sheets, pair[1].text))


def _largest_that_fits(measured: Stock, rooms: Sequence[Room]) -> tuple[Stock, Fit]:
    fits = [largest(case(measured, UNDER, room), 99) for room in rooms]
    best = max((fit for fit in fits if fit), key=lambda fit: fit.text)
    return measured, best


def drawn(measured: Stock, fit: Fit) -> tuple[Chart, ...]:
    """Draw every sheet of a layout."""
    count = fit.columns
    sheets = [fit.filled[at : at + count] for at in range(0, len(fit.filled), count)]
    on_sheet = {
        step: number
        for number, columns in reversed(list(enumerate(sheets, start=1)))
        for step in _steps(columns)
    }
    tops = frozenset(
        column.pieces[0].blocks[0].step for column in fit.filled if not column.pieces[0].first
    )
    charts = []
    for number, columns in enumerate(sheets, start=1):
        pen = Pen(measured, on_sheet, number, tops)
        charts.append(_sheet(pen, fit, columns).moved(0, 0, fit.text / TEXT))
    return tuple(charts)


def _steps(columns: Sequence[Column]) -> Iterator[str]:
    for piece in (piece for column in columns for piece in column.pieces):
        for block in piece.blocks:
            yield block.step
            yield from (link.step for side in block.sides for link in side.links)


def _sheet(pen: Pen, fit: Fit, columns: Sequence[Column]) -> Chart:
    items = [piece for column in columns for piece in column.pieces]
    parts: list[Part] = []
    cuts: list[float] = []
    shown = balanced(items, columns)
    for number, column in enumerate(shown):
        x = EDGE + number * (fit.column + COLUMN_GAP)
        for part in _column(pen, fit, column, x, cuts):
            parts.append(part)
    return Chart(
        title=pen.stock.flow.title,
        description="",
        width=2 * EDGE + len(shown) * (fit.column + COLUMN_GAP) - COLUMN_GAP,
        height=2 * EDGE + max((column.height for column in shown), default=0),
        text_size=TEXT,
        small_size=SMALL,
        parts=tuple(parts),
        cuts=tuple(cuts) if len(shown) == 1 else (),
    )


def _column(pen: Pen, fit: Fit, column: Column, x: float, cuts: list[float]) -> Iterator[Part]:
    y = EDGE
    for number, piece in enumerate(column.pieces):
        last = number == len(column.pieces) - 1
        for at, (block, made) in enumerate(zip(piece.blocks, piece.sizes, strict=True)):
            inner = at < len(piece.blocks) - 1
            cuts.append(y)
            cut = last and not inner and not piece.last
            yield from fit.style.draw(pen, block, made, Rect(x, y, fit.column, 0), cut)
            y += made.body + (made.tail if inner else 0)
        if not last:
            y += SECTION_GAP if column.pieces[number + 1].first else piece.tail
