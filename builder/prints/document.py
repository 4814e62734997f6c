"""Sheets whose text flows from page to page: paragraphs and tables in the faces of the charts.

In: flowables of reportlab. Out: the bytes of a PDF with a foot on every page.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from html import escape
from io import BytesIO
from typing import Any

from reportlab.lib.colors import Color, white
from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfbase.pdfmetrics import registerFontFamily
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import BaseDocTemplate, Flowable, Frame, PageTemplate, Paragraph, Table

from builder.chart.fonts import bold, medium
from builder.prints.caution_strip import PrintedCaution
from builder.prints.drawing import INK, QUIET, SIGNAL_COLORS
from builder.prints.head import signal_words
from builder.prints.paper import MARGIN, Paper
from builder.prints.sheet import (
    FOOT,
    LEAST_SIZE,
    Foot,
    draw_foot,
    draw_running_head,
    link_foot,
    register_faces,
)
from builder.wording.results import NO_BREAK

RULE_WIDTH = 0.6  # points: width of the lines to write on


class MeasuredParagraph(Paragraph):
    """A paragraph that is broken into lines once, however often a table asks how high it is."""

    _wrapped: tuple[float, tuple[float, float]] | None = None

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        """Return the size in a width; the height there is does not matter."""
        lost = not hasattr(self, "blPara")  # its lines: a paragraph that can't be split drops them
        if lost or self._wrapped is None or self._wrapped[0] != width:
            self._wrapped = width, super().wrap(width, height)
        assert self._wrapped is not None
        return self._wrapped[1]


Story = Callable[[], Iterable[Flowable]]  # made when the faces are known
PageMarks = Callable[[Canvas, int, int], None]  # draws on a page, by its number, of so many


class PagedCanvas(Canvas):
    """A canvas that draws heads and feet last, when it is known how many pages there are.

    Each page shows a form of its name, which is drawn in the end.
    """

    def __init__(self, marks: PageMarks, *arguments: Any, **settings: Any) -> None:
        """Take what draws a head and a foot, then what any canvas takes."""
        super().__init__(*arguments, **settings)
        self._marks = marks

    def save(self) -> None:
        """Draw the form of every page, and write the file."""
        count = self.getPageNumber() - 1  # the page that would come next
        for page in range(1, count + 1):
            self.beginForm(form_name(page))
            self._marks(self, page, count)
            self.endForm()
        super().save()


@dataclass(frozen=True, slots=True)
class DocumentNames:
    """What a document is called."""

    title: str
    subject: str
    head: str = ""  # of every page after the first; "" for the title


def form_name(page: int) -> str:
    """Name the head and foot of a page."""
    return f"page-{page}"


def document(paper: Paper, names: DocumentNames, story: Story, foot: Foot) -> bytes:
    """Set a story on as many pages as it takes; the foot says which page of how many it is."""
    register_faces()
    name = medium().name
    registerFontFamily(name, normal=name, bold=bold().name, italic=name, boldItalic=bold().name)

    def on_page(canvas: Canvas, document: BaseDocTemplate) -> None:
        if document.page == 1:
            canvas.bookmarkPage("start")
            canvas.addOutlineEntry(names.title, "start", level=0)
        canvas.doForm(form_name(document.page))
        canvas.setLineWidth(RULE_WIDTH)
        link_foot(canvas, paper, foot)

    def marks(canvas: Canvas, page: int, count: int) -> None:
        if page > 1:
            draw_running_head(canvas, paper, names.head or names.title, f"Page {page} of {count}")
        heading = f"{foot.title}: page {page} of {count}" if count > 1 else foot.title
        draw_foot(canvas, paper, Foot(heading, foot.lines, foot.address))

    buffer = BytesIO()
    settings: dict[str, Any] = {
        "pagesize": (paper.width, paper.height),
        "title": names.title,
        "subject": names.subject,
        "author": "",
        "creator": "Baytree",
        "lang": "en-US",
        "invariant": 1,
        "displayDocTitle": True,
        "initialFontName": name,
    }
    made = BaseDocTemplate(buffer, **settings)
    high = paper.inner_height - FOOT - 6
    frame = Frame(MARGIN, MARGIN + FOOT + 6, paper.inner_width, high, 0, 0, 0, 0)
    made.addPageTemplates([PageTemplate("page", [frame], onPage=on_page)])
    made.build(list(story()), canvasmaker=partial(PagedCanvas, marks))
    return buffer.getvalue()


def paragraph_style(
    size: float = LEAST_SIZE,
    *,
    heavy: bool = False,
    ink: Color = INK,
    above: float = 0,
    below: float = 0,
) -> ParagraphStyle:
    """Return a style of paragraph in the faces of the charts."""
    return ParagraphStyle(
        f"{size}{heavy}{ink}{above}{below}",
        fontName=(bold() if heavy else medium()).name,
        fontSize=size,
        leading=1.2 * size,
        textColor=ink,
        spaceBefore=above,
        spaceAfter=below,
    )


def paragraph(text: str, how: ParagraphStyle | None = None) -> MeasuredParagraph:
    """Set a text of an author; nothing in it is taken for markup."""
    return MeasuredParagraph(escape(text, quote=False), how or paragraph_style())


def blank_to_fill(before: str, wide: int, after: str = "") -> MeasuredParagraph:
    """Set words with a line to write on, about `wide` characters long."""
    line = f"<u>{NO_BREAK * 2 * wide}</u>"
    return MeasuredParagraph(f"{escape(before)} {line} {escape(after)}", paragraph_style(above=3))


def heading(text: str, size: float = 13, above: float = 0.6) -> MeasuredParagraph:
    """Set a heading between parts, `above` of its size below them; it stays with what follows."""
    how = paragraph_style(size, heavy=True, above=above * size, below=0.2 * size)
    how.keepWithNext = 1
    return paragraph(text, how)


def quiet_paragraph(text: str) -> MeasuredParagraph:
    """Set what is of less weight."""
    return paragraph(text, paragraph_style(ink=QUIET))


def filled_in(details: Mapping[str, str]) -> list[str]:
    """Return the names of places to write on, with what is known of them."""
    return [f"{name}: {text}" if text else name for name, text in details.items()]


def blank_table(names: Iterable[str], paper: Paper, high: float = 24) -> Table:
    """Set places to write on: each name with a line after it, two to a row."""
    cells = list(names)
    half = paper.inner_width / 2
    rows = [[paragraph(name, paragraph_style(ink=QUIET)) for name in cells[at : at + 2]]
            for at in range(0, len(cells), 2)]  # fmt: skip
    rows[-1] += [paragraph("")] * (2 - len(rows[-1]))
    made = Table(rows, colWidths=[half, half], rowHeights=high)
    made.setStyle([
        ("VALIGN", (0, 0), (-1, -1), "BOTTOM"),
        ("LINEBELOW", (0, 0), (-1, -1), 0.6, INK),
        ("LEFTPADDING", (0, 0), (-1, -1), 0),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 2),
    ])  # fmt: skip
    return made


def caution_table(met: Sequence[PrintedCaution], paper: Paper) -> list[Flowable]:
    """Set cautions, each behind its signal word on its ground."""
    if not met:
        return []
    rows = []
    looks: list[tuple[Any, ...]] = [
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("TOPPADDING", (0, 0), (-1, -1), 1),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 2),
        ("LEFTPADDING", (0, 0), (-1, -1), 4),
    ]
    for at, caution in enumerate(met):
        ground, ink = SIGNAL_COLORS[caution.signal]
        said = f"<b>{escape(caution.short)}</b> {escape(caution.text, quote=False)}"
        rows.append([paragraph(signal_words(caution.signal), paragraph_style(heavy=True, ink=ink)),
                     MeasuredParagraph(said, paragraph_style())])  # fmt: skip
        looks.append(("BACKGROUND", (0, at), (0, at), ground))
        looks.append(("LINEABOVE", (0, at), (0, at), 1.5, white))
    made = Table(rows, colWidths=[72, paper.inner_width - 72])
    made.setStyle(looks)
    return [made]
