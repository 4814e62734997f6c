"""Where everything stands on a wall chart: its paper, its head, and the chart on its sheets.

In: a tree, the library, a paper, and from how far it shall be read. Out: a `Wall`, ready to draw.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from functools import partial
from math import inf

from builder.chart.chart import Chart
from builder.chart.flow import Flow, flow_of
from builder.chart.fonts import LEADING
from builder.chart.layout import (
    EASY_TEXT,
    LEAST_TEXT,
    Sheets,
    more_sheets,
    sheet_charts,
    single_sheet,
)
from builder.chart.spacing import COLUMN_GAP
from builder.chart.step_function import StepFunction
from builder.chart.text_fit import Room
from builder.model.library import Library
from builder.model.tree import Tree
from builder.prints.caution_strip import draw_key
from builder.prints.drawing import legend_width
from builder.prints.head import (
    SPACE,
    SheetHead,
    draw_banner,
    draw_particulars,
    head_of,
    head_that_fits,
    tree_marks,
)
from builder.prints.paper import Paper, text_to_read
from builder.prints.sheet import CODE, FOOT, LEAST_SIZE
from builder.prints.wall_distance import TooFarError, holds_distance, too_far
from builder.wording.placeholders import in_plain_words

LEGEND = 20.0  # height of the line that explains the symbols, where it has no place in the foot
CONTENTS = 3  # lines for the contents of the sheets, where the first holds the head alone
# Of the height, that particulars and cautions may take: where the text would be small, less.
HEAD_SHARE, SMALL_SHARE = 0.12, 0.06
LEAST_BESIDE = 230.0  # width of particulars beside a chart: narrower, they read as a ribbon


@dataclass(frozen=True, slots=True)
class Wall:
    """A tree laid out on sheets of one paper."""

    tree: Tree
    paper: Paper  # upright or lying
    head: SheetHead
    charts: tuple[Chart, ...]  # one a sheet
    beside: bool  # whether particulars and cautions stand beside the chart, not above it

    @property
    def particulars_width(self) -> float:
        """Width in points that the particulars have on the first sheet."""
        first = self.charts[0]
        if not self.beside or not first.parts:
            return self.paper.inner_width
        left = min(box.rect.x for box in first.boxes)
        return (left - COLUMN_GAP) * first.scale

    @property
    def chart_top(self) -> float:
        """Height in points from the upper margin of the first sheet to its chart."""
        top = draw_banner(None, self.head, self.paper)
        if not self.beside or not self.charts[0].parts:
            top += draw_particulars(None, self.head, 0, self.particulars_width)
        return top


def wall_layout(tree: Tree, library: Library, paper: Paper, distance: float | None = None) -> Wall:
    """Lay a tree out, upright or lying, whichever takes fewer sheets or gives larger text.

    Raises TooFarError if a distance takes more sheets than a wall holds.
    """
    tree = in_plain_words(tree)
    flow = wall_flow(tree, library)
    head = head_of(tree, library, flow.numbers)
    text = max(text_to_read(distance), LEAST_TEXT) if distance else LEAST_TEXT
    roomy, tight = (_heads(head, paper, share) for share in (HEAD_SHARE, SMALL_SHARE))
    wall = (
        _with_head(tree, flow, roomy, partial(single_sheet, text=max(text, EASY_TEXT)))
        or _with_head(tree, flow, tight, partial(single_sheet, text=text))
        or _on_more(tree, flow, roomy, text)
    )
    if distance and not holds_distance(wall.charts, distance):
        rooms = [_room(tight[one], one, beside=False) for one in tight]
        raise TooFarError(
            too_far(lambda text: sheet_charts(flow, rooms, text).charts, paper, distance)
        )
    return wall


Heads = Mapping[Paper, SheetHead]  # by the paper, upright and lying


def _heads(head: SheetHead, paper: Paper, share: float) -> Heads:
    """Return the head for a paper and for the same turned, its cautions as short as it takes."""
    papers = (paper, paper.turned)
    return {one: head_that_fits(head, one, _left(head, one, share)) for one in papers}


LayOut = Callable[[Flow, list[Room]], Sheets | None]


def _with_head(tree: Tree, flow: Flow, heads: Heads, lay_out: LayOut) -> Wall | None:
    """Lay out, the particulars above the chart or beside it."""
    ways = {
        _room(heads[one], one, beside): (one, beside) for one in heads for beside in (False, True)
    }
    sheets = lay_out(flow, list(ways))
    if sheets is None:
        return None
    sheet, beside = ways[sheets.room]
    return Wall(tree, sheet, heads[sheet], sheets.charts, beside)


def _on_more(tree: Tree, flow: Flow, heads: Heads, text: float) -> Wall:
    wall = _with_head(tree, flow, heads, partial(more_sheets, text=text))
    assert wall  # a chart is laid out smaller rather than not at all
    return wall


def wall_flow(tree: Tree, library: Library) -> Flow:
    """Return what a wall chart shows: signs for the hazards, and no minutes of work."""
    flow = flow_of(tree, library, tree_marks(tree, library))
    return replace(flow, nodes={name: replace(node, work="") for name, node in flow.nodes.items()})


def _left(head: SheetHead, paper: Paper, share: float) -> float:
    """Return the room for particulars on a first sheet: a share of it, or all that is left."""
    high = paper.inner_height - FOOT - legend_height(paper) - draw_banner(None, head, paper)
    return min(high - CONTENTS * LEAST_SIZE * LEADING, share * paper.inner_height)


def legend_height(paper: Paper) -> float:
    """Return the height that the legend takes above the foot; none where it stands in it."""
    return 0 if legend_width() <= paper.inner_width - CODE - SPACE else LEGEND


def _room(head: SheetHead, paper: Paper, beside: bool) -> Room:
    """Return the room of a paper, its particulars above the chart or beside it."""
    high = paper.inner_height - FOOT - legend_height(paper)
    left = high - draw_banner(None, head, paper)
    high -= draw_key(None, head.cautions, (0, 0), paper.inner_width)

    def particulars(width: float) -> float:
        return draw_particulars(None, head, 0, width) if width >= LEAST_BESIDE else inf

    if beside:
        return Room(paper.inner_width, high, left, StepFunction(particulars))
    return Room(paper.inner_width, high, left - particulars(paper.inner_width))
