"""The book of a system: the wall charts of its trees in one file, with contents and outline.

In: the trees of a system, laid out, and the library. Out: the bytes of a PDF.
"""

from collections.abc import Iterable, Sequence

from reportlab.pdfgen.canvas import Canvas

from builder.model.library import Library
from builder.prints.paper import MARGIN, Paper, wall_paper
from builder.prints.sheet import (
    FOOT,
    SAFETY,
    UNCONTROLLED,
    Foot,
    TextLook,
    draw_foot,
    link_foot,
    new_canvas,
    set_words,
    site_root,
)
from builder.prints.wall import draw_wall
from builder.prints.wall_layout import Wall

TITLE, LINE = 28.0, 14.0  # sizes on the contents page
SPACING = 22.0


def book(walls: Iterable[Wall], system: str, library: Library, paper: str = "") -> bytes:
    """Print the wall charts of a system in one file, in the order of their titles."""
    sheet = wall_paper(paper, library.shop.paper)
    walls = sorted(walls, key=lambda wall: str(wall.tree.title).casefold())
    known = library.systems.get(system)
    title = f"{known.name if known else system}: decision trees"
    canvas, buffer = new_canvas(title, f"Book of the system {system}")
    _contents(canvas, title, walls, library, sheet)
    for wall in walls:
        draw_wall(canvas, wall, library)
    canvas.save()
    return buffer.getvalue()


def _contents(
    canvas: Canvas, title: str, walls: Sequence[Wall], library: Library, paper: Paper
) -> None:
    """Draw the contents, as many pages as they take; each line leads to its tree."""
    room = int((paper.inner_height - FOOT - 60) // SPACING)
    count = max(1, -(-len(walls) // room))
    page = count + 1
    canvas.bookmarkPage("contents")
    canvas.addOutlineEntry("Contents", "contents", level=0)
    for number in range(count):
        canvas.setPageSize((paper.width, paper.height))
        top = paper.height - MARGIN
        top = set_words(
            canvas, title, (MARGIN, top), paper.inner_width, TextLook(TITLE, heavy=True)
        )
        top -= LINE
        for wall in walls[number * room : (number + 1) * room]:
            _line(canvas, wall, page, top, paper)
            top -= SPACING
            page += len(wall.charts)
        foot = Foot(title, [f"{library.shop.name}.", SAFETY, UNCONTROLLED],
                    f"{site_root(library)}/index.html")  # fmt: skip
        draw_foot(canvas, paper, foot)
        link_foot(canvas, paper, foot)
        canvas.showPage()


def _line(canvas: Canvas, wall: Wall, page: int, top: float, paper: Paper) -> None:
    right = paper.width - MARGIN
    set_words(canvas, str(wall.tree.title), (MARGIN, top), paper.inner_width - 40, TextLook(LINE))
    set_words(canvas, str(page), (right - 30, top), 30, TextLook(LINE))
    place = (MARGIN, top - SPACING + 2, right, top)
    canvas.linkRect("", wall.tree.id, place, thickness=0)
