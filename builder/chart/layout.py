"""From a tree to the charts of a page and of sheets.

In: a `Tree` and, for paper, the room on each sheet. Out: `Chart`s.

On paper the text comes first: sheets are added rather than text made smaller. The style with the
results to the right is the plainest; the other is taken if its text is larger or it saves a sheet.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import partial
from itertools import product
from typing import NamedTuple

from builder.chart.chart import Chart
from builder.chart.column_widths import with_fitted_columns
from builder.chart.columns import Column, block_groups, galley, galley_height
from builder.chart.draw_sheets import jumps_to_other_sheets, sheet_drawings, with_even_columns
from builder.chart.ends_beside import ends_beside
from builder.chart.ends_once import ends_once
from builder.chart.flow import Flow, flow_of
from builder.chart.flow_metrics import FlowMetrics, Jump, flow_metrics
from builder.chart.results_joined import results_joined
from builder.chart.spacing import TEXT
from builder.chart.split_checks import split_checks
from builder.chart.styles import STYLES, UNDER
from builder.chart.text_fit import (
    FitTask,
    Room,
    SheetLayout,
    StyledFlow,
    fewest_sheets_layout,
    fit_task,
    largest_layout,
    styled_flow,
)
from builder.model.library import Library
from builder.model.tree import Tree

PAGE_WIDTH = 230.0  # of a column in the page, at the nominal text size
PAGE_SCALE = 1.6  # 16 px text
FITTED_GAIN = 1.03  # how much larger the text mostly gets in columns of several widths
LESS_PLAIN_GAIN = 1.03  # how much larger the text must be for the less plain style
MANY = 99  # more sheets, or results of one check, than there will ever be
FEW = 3  # results of a check: to no fewer is it split only to save sheets
# How a flow is split, step by step: most results beside a box, and whether heads stand alone.
SPLITS = ((MANY, False), (FEW, False), (2, False), (1, False), (1, True))
LEAST_TEXT = 11.0  # points: least text of the boxes on paper; it reads from 0.55 m
EASY_TEXT = 13.2  # points: it reads from 0.7 m


def page_chart(tree: Tree, library: Library | None = None) -> Chart:
    """Lay a tree out in one column for the page."""
    return one_column(flow_of(tree, library))


def one_column(flow: Flow) -> Chart:
    """Lay a flow out in one column, results under the checks."""
    measured = flow_metrics(drawn_short(flow))
    items = galley(measured, UNDER, block_groups(measured.flow.sections)).at(PAGE_WIDTH)
    column = Column(items, galley_height(items))
    room = Room(PAGE_WIDTH, column.height, column.height)
    fit = SheetLayout(UNDER, room, TEXT * PAGE_SCALE, (PAGE_WIDTH,), (column,))
    return sheet_drawings(measured, fit)[0]


def drawn_short(flow: Flow) -> Flow:
    """Draw what is the same once, and every end where the result is read that leads to it."""
    return results_joined(ends_beside(flow))


@dataclass(frozen=True, slots=True)
class Sheets:
    """A flow laid out on paper."""

    room: Room  # the way in which the paper is used
    charts: tuple[Chart, ...]  # one a sheet


def sheet_charts(flow: Flow, rooms: Sequence[Room], text: float = LEAST_TEXT) -> Sheets:
    """Lay a flow out on as few sheets as it takes with text no smaller than `text` points.

    Each room is one way to use the paper (upright, lying); the one that takes the fewest sheets is
    taken, then one in which the chart begins on the first, then the one with the largest text.
    Checks with many results are split if a sheet cannot hold one otherwise, or if that saves
    sheets; if a single box at that size is larger than a sheet, the largest text that fits is taken
    instead: the charts tell theirs.
    """
    return single_sheet(flow, rooms, text) or more_sheets(flow, rooms, text)


def single_sheet(flow: Flow, rooms: Sequence[Room], text: float = LEAST_TEXT) -> Sheets | None:
    """Lay a flow out on one sheet; None if its text would be smaller than `text` points."""
    one = flow_metrics(ends_once(drawn_short(flow)))
    best = _on_one_sheet([styled_flow(one, style) for style in STYLES], rooms, text)
    return Sheets(best.room, sheet_drawings(one, best)) if best else None


def more_sheets(flow: Flow, rooms: Sequence[Room], text: float) -> Sheets:
    """Lay a flow out that one sheet does not hold."""
    flow = drawn_short(flow)
    settled = _fewest_sheets(flow, rooms, text)
    settled = settled or _settled(split_checks(flow, 1), True, partial(_largest, rooms))
    if not settled:
        raise ValueError(f"no text of a point or more fits any of {rooms}")
    return Sheets(settled.layout.room, sheet_drawings(*settled))


class Settled(NamedTuple):
    """A layout on several sheets in which every jump names its sheet."""

    metrics: FlowMetrics
    layout: SheetLayout


def _fewest_sheets(flow: Flow, rooms: Sequence[Room], text: float) -> Settled | None:
    """Split checks as little as it takes to fit; to `FEW` results beside a box to save sheets.

    One check with eight results makes every column as wide as it needs, however many sheets follow.
    """
    fewest: Settled | None = None
    for most, separate in SPLITS:
        if fewest and most < FEW:
            break
        task = SheetTask(rooms, text, fewest.layout.sheets - 1 if fewest else MANY)
        fewest = _settled(split_checks(flow, most), separate, partial(best_layout, task)) or fewest
    return fewest


@dataclass(frozen=True, slots=True)
class SheetTask:
    """What a layout on several sheets must keep to."""

    rooms: Sequence[Room]
    text: float  # points, or larger
    sheets: int  # no more than these


def best_layout(task: SheetTask, styles: Sequence[StyledFlow]) -> SheetLayout | None:
    """Lay out with the largest text, where it takes the fewest sheets."""
    few: dict[tuple[Room, str], SheetLayout] = {}
    least = task.sheets
    for room, one in product(task.rooms, styles):
        found = fewest_sheets_layout(fit_task(one, room), task.text, least)
        if found:
            few[room, one.style.name] = found
            least = found.sheets
    best: SheetLayout | None = None
    for room in task.rooms:
        in_room: SheetLayout | None = None
        for one in styles:
            found = few.get((room, one.style.name))
            if found and found.sheets == least:
                beyond = _to_beat(in_room)
                in_room = plainest_of_good([in_room, _filled(fit_task(one, room), found, beyond)])
        best = best_paper_use([best, in_room])
    return best


def _filled(task: FitTask, few: SheetLayout, beyond: float) -> SheetLayout | None:
    """Lay out on the same sheets with the largest text; first of all so that the first has some."""
    begun = largest_layout(replace(task, begins=True), few.sheets, few.text, beyond)
    return begun or largest_layout(task, few.sheets, few.text, beyond) or few


def _to_beat(fit: SheetLayout | None) -> float:
    """Return the text size that a less plain layout of as many sheets must pass."""
    return _clearly_larger(fit.text) if fit and fit.begins else 0


def _clearly_larger(text: float) -> float:
    return text * (LESS_PLAIN_GAIN if text >= LEAST_TEXT else 1)


def _largest(rooms: Sequence[Room], styles: Sequence[StyledFlow]) -> SheetLayout | None:
    fits = [largest_layout(fit_task(styles[-1], room), MANY) for room in rooms]
    return max((fit for fit in fits if fit), key=lambda fit: fit.text, default=None)


def best_paper_use(fits: Sequence[SheetLayout | None]) -> SheetLayout | None:
    """Choose between the ways to use the paper."""
    found = [fit for fit in fits if fit]
    return max(found, key=lambda fit: (-fit.sheets, fit.begins, fit.text), default=None)


def _settled(
    flow: Flow, separate: bool, search: Callable[[Sequence[StyledFlow]], SheetLayout | None]
) -> Settled | None:
    """Lay out again until every jump to another sheet has room for that sheet's number.

    The jumps that have room only grow in number, so it comes to an end; mostly the second time.
    """
    elsewhere: frozenset[Jump] = frozenset()
    styles: list[StyledFlow | None] = [None] * len(STYLES)
    while True:
        metrics = flow_metrics(flow, sheets=True, elsewhere=elsewhere)
        styled = [styled_flow(metrics, style, separate, earlier)
                  for style, earlier in zip(STYLES, styles, strict=True)]  # fmt: skip
        layout = search(styled)
        if layout is None:
            return None
        jumps = frozenset(jumps_to_other_sheets(flow, layout))
        if jumps <= elsewhere:
            return Settled(metrics, with_even_columns(layout))
        elsewhere |= jumps
        styles = [*styled]


def one_sheet(flow: Flow, room: Room, style: str = "") -> Chart:
    """Force a flow on one sheet, with the largest text; a style (right, under) can be named."""
    measured = flow_metrics(ends_once(drawn_short(flow)))
    styles = [styled_flow(measured, one) for one in STYLES if style in ("", one.name)]
    best = _on_one_sheet(styles, [room], 1)
    if best is None:
        raise ValueError(f"no text of a point or more fits {room}")
    return sheet_drawings(measured, best)[0]


def _on_one_sheet(
    styles: Sequence[StyledFlow], rooms: Sequence[Room], text: float
) -> SheetLayout | None:
    """Lay out in columns of one width, then let each be as wide as it needs."""
    least = text / FITTED_GAIN
    fits = []
    for one in styles:
        fit = best_paper_use([largest_layout(fit_task(one, room), 1, least) for room in rooms])
        fitted = with_fitted_columns(one, fit) if fit else None
        fits.append(fitted if fitted and fitted.text >= text else None)
    return plainest_of_good(fits)


def plainest_of_good(fits: Sequence[SheetLayout | None]) -> SheetLayout | None:
    """Choose between layouts given in order of plainness.

    Fewer sheets come first, then a chart that begins on the first; of equals the plainer one,
    unless its text is smaller by more than it is worth or smaller than it should be on paper.
    """
    best: SheetLayout | None = None
    for fit in fits:
        if fit and (best is None or _better(fit, best)):
            best = fit
    return best


def _better(fit: SheetLayout, best: SheetLayout) -> bool:
    if fit.sheets != best.sheets:
        return fit.sheets < best.sheets
    if fit.begins != best.begins:
        return fit.begins
    return fit.text > _clearly_larger(best.text)
