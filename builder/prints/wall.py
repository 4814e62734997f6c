"""The wall chart: a tree on as few sheets as it takes, its text no smaller than can be read.

In: a tree, the library, a paper, and from how far it shall be read. Out: the bytes of a PDF.
"""

from reportlab.pdfgen.canvas import Canvas

from builder.chart.fonts import LEADING
from builder.model.library import Library
from builder.model.tree import Tree
from builder.prints.caution_strip import draw_key
from builder.prints.drawing import ChartLinks, draw_chart, draw_legend
from builder.prints.head import draw_banner, draw_particulars
from builder.prints.paper import HEAD_DISTANCE, MARGIN, reading_words, wall_paper
from builder.prints.sheet import (
    FOOT,
    LEAST_SIZE,
    Foot,
    TextLook,
    draw_foot,
    draw_running_head,
    foot_lines,
    link_foot,
    new_canvas,
    page_address,
    set_words,
    site_root,
)
from builder.prints.sheet_steps import steps_on_sheet
from builder.prints.wall_layout import Wall, legend_height, wall_layout

IN_FOOT = 6.0  # from the margin to the middle of the legend where it stands beside the square code


def wall_chart(
    tree: Tree, library: Library, paper: str = "", distance: float | None = None
) -> bytes:
    """Print a tree for the wall; without a paper, on the large one beside the shop's.

    With a distance (meters) the text is as large as that takes, on as many sheets as it takes.
    Raises TooFarError where that is more than a wall holds.
    """
    wall = wall_layout(tree, library, wall_paper(paper, library.shop.paper), distance)
    canvas, buffer = new_canvas(str(tree.title), f"Wall chart of {tree.id}, {tree.revision}")
    draw_wall(canvas, wall, library)
    canvas.save()
    return buffer.getvalue()


def draw_wall(canvas: Canvas, wall: Wall, library: Library) -> None:
    """Draw every sheet of a tree, each on a page of its own."""
    tree, paper = wall.tree, wall.paper
    address = page_address(tree, library)
    for number, chart in enumerate(wall.charts, start=1):
        canvas.setPageSize((paper.width, paper.height))
        top = paper.height - MARGIN
        if number == 1:
            canvas.bookmarkPage(tree.id)
            canvas.addOutlineEntry(str(tree.title), tree.id, level=0)
            _draw_head(canvas, wall, top)
            top -= wall.chart_top
        else:
            draw_running_head(
                canvas, paper, str(tree.title), f"Sheet {number} of {len(wall.charts)}"
            )
            key = (MARGIN, MARGIN + FOOT + legend_height(paper))
            draw_key(canvas, wall.head.cautions, key, paper.inner_width)
        high = legend_height(paper)
        draw_legend(canvas, MARGIN, MARGIN + FOOT + high / 2 if high else MARGIN + IN_FOOT)
        canvas.saveState()
        canvas.translate(MARGIN, top)
        draw_chart(canvas, chart, ChartLinks(site_root(library), address, f"{tree.id}#"))
        canvas.restoreState()
        foot = _foot(wall, library, number, address)
        draw_foot(canvas, paper, foot)
        link_foot(canvas, paper, foot)
        canvas.showPage()


def _draw_head(canvas: Canvas, wall: Wall, top: float) -> None:
    under = top - draw_banner(canvas, wall.head, wall.paper)
    draw_particulars(canvas, wall.head, under, wall.particulars_width)
    if not wall.charts[0].parts:
        _contents(canvas, wall, top - wall.chart_top)


def _contents(canvas: Canvas, wall: Wall, top: float) -> None:
    """Say on a first sheet that has room for the head only where each step stands."""
    said = [
        f"Sheet {number}: {steps_on_sheet(wall.charts, number)}"
        for number in range(2, len(wall.charts) + 1)
    ]
    room = (top - MARGIN - FOOT - legend_height(wall.paper)) / (len(said) + 1)
    if room < LEAST_SIZE * LEADING:
        said = ["; ".join(said)]
    size = max(min(wall.charts[0].text_size, room / LEADING), LEAST_SIZE)
    top -= min(size, room / LEADING) * LEADING / 2
    for words in said:
        top = set_words(canvas, words, (MARGIN, top), wall.paper.inner_width, TextLook(size))


def _foot(wall: Wall, library: Library, number: int, address: str) -> Foot:
    chart, count = wall.charts[number - 1], len(wall.charts)
    title = str(wall.tree.title)
    if count > 1:
        title += f": sheet {number} of {count}, {steps_on_sheet(wall.charts, number)}"
    head = f"; the head from {HEAD_DISTANCE:g} m" if number == 1 else ""
    *lines, last = foot_lines(wall.tree, library)
    distance = f"{last} {reading_words(chart.small_size)}{head}."
    return Foot(title, [*lines, distance], address)
