"""What every sheet has: a canvas that gives the same bytes twice, words set in lines, a foot.

In: a paper, the tree or article that is printed. Out: marks on a reportlab canvas, y upwards.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from io import BytesIO
from itertools import groupby
from typing import Any
from zlib import crc32

import segno
from reportlab import rl_config
from reportlab.lib.colors import Color
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas

from builder.chart.fonts import LEADING, bold, medium
from builder.chart.measured_word import WordLine, line_width, measured_words
from builder.chart.text_block import broken_lines, text_block
from builder.model.library import Library
from builder.model.tree import Status, Tree
from builder.prints.drawing import INK, QUIET
from builder.prints.paper import MARGIN, Paper

LEAST_SIZE = 10.0  # points: the smallest text on any sheet
RISE = 4.0  # of the running head over the upper margin: printers leave a quarter inch blank
CODE = 62.0  # side of the square code
FOOT = CODE + 8.0  # height kept for the foot
UNCONTROLLED = "Uncontrolled when printed."
SAFETY = "The vehicle maker's service information, local codes and licensed practice come first."


@dataclass(frozen=True, slots=True)
class Foot:
    """What the foot of a sheet says."""

    title: str
    lines: Sequence[str]
    address: str  # what the square code opens


def register_faces() -> None:
    """Make the faces known to reportlab."""
    # Streams are written as bytes: as letters they are a quarter longer, and slow to translate.
    rl_config.useA85 = 0
    for face in (medium(), bold()):
        if face.name not in pdfmetrics.getRegisteredFontNames():
            pdfmetrics.registerFont(TTFont(face.name, str(face.file)))


def new_canvas(title: str, subject: str) -> tuple[Canvas, BytesIO]:
    """Open a document in memory; everything about it is the same each time."""
    register_faces()
    buffer = BytesIO()
    first: Any = medium().name  # the stubs of reportlab take it for a number
    canvas = Canvas(buffer, invariant=1, initialFontName=first, lang="en-US")
    canvas.setTitle(title)
    canvas.setSubject(subject)
    canvas.setAuthor("")
    canvas.setCreator("Baytree")
    canvas.setViewerPreference("DisplayDocTitle", "true")
    return canvas, buffer


def site_root(library: Library) -> str:
    """Return the address of the shop's site, without a slash at its end."""
    return str(library.shop.site_address).rstrip("/")


def page_address(tree: Tree, library: Library) -> str:
    """Return the address of a tree's page, with the revision that was printed."""
    folder = "" if tree.is_procedure else "trees/"
    return f"{site_root(library)}/{folder}{tree.id}.html?printed={tree.revision}"


def foot_lines(tree: Tree, library: Library) -> list[str]:
    """Return what the foot says of a tree: revision, review, who comes first, how far to trust."""
    review = f"reviewed {tree.reviewed.date} by {tree.reviewed.by}" if tree.reviewed else (
        "not reviewed"
    )  # fmt: skip
    draft = "DRAFT, not for use. " if tree.status is Status.DRAFT else ""
    return [
        f"{draft}{library.shop.name}, {tree.id}, revision {tree.revision}, {review}.",
        SAFETY,
        UNCONTROLLED,
    ]


def draw_foot(canvas: Canvas, paper: Paper, foot: Foot) -> None:
    """Draw the foot of a sheet: its words, and the square code that opens the page."""
    top = MARGIN + CODE
    canvas.setStrokeColor(INK)
    canvas.setLineWidth(0.6)
    canvas.line(MARGIN, top + 4, paper.width - MARGIN, top + 4)
    if foot.address:
        square_code(canvas, foot.address, paper.width - MARGIN - CODE, MARGIN, CODE)
    room = paper.inner_width - CODE - 8
    top = set_words(canvas, foot.title, (MARGIN, top), room, TextLook(heavy=True))
    for line in foot.lines:
        top = set_words(canvas, line, (MARGIN, top), room, TextLook(ink=QUIET))


def link_foot(canvas: Canvas, paper: Paper, foot: Foot) -> None:
    """Let the square code of a foot open on a screen what it opens for a camera."""
    if foot.address:
        right = paper.width - MARGIN
        place = (right - CODE, MARGIN, right, MARGIN + CODE)
        canvas.linkURL(foot.address, place, thickness=0)


def draw_running_head(canvas: Canvas, paper: Paper, title: str, sheet: str) -> None:
    """Say in the upper margin what a further sheet belongs to; sheets come off the wall singly."""
    y = paper.height - MARGIN + RISE
    canvas.setFillColor(INK)
    canvas.setFont(bold().name, LEAST_SIZE)
    room = paper.inner_width - bold().width(f"{sheet}  ", LEAST_SIZE)
    canvas.drawString(MARGIN, y, line_text(lines_of(title, room, TextLook(heavy=True))[0]))
    canvas.drawRightString(paper.width - MARGIN, y, sheet)


def square_code(canvas: Canvas, text: str, x: float, y: float, side: float) -> None:
    """Draw a square code; its rectangles stand once in a file, however many sheets show it."""
    name = f"code-{crc32(text.encode())}"
    if not canvas.hasForm(name):
        canvas.beginForm(name)
        _draw_modules(canvas, text)
        canvas.endForm()
    canvas.saveState()
    canvas.translate(x, y)
    canvas.scale(side, side)
    canvas.doForm(name)
    canvas.restoreState()


def _draw_modules(canvas: Canvas, text: str) -> None:
    """Draw the dark rectangles of a code of side 1, with the blank border it needs."""
    matrix = _modules(text)
    count = len(matrix) + 4  # two modules on each side: the paper around it is blank as well
    canvas.scale(1 / count, 1 / count)
    canvas.setFillColor(INK)
    path = canvas.beginPath()
    for row, cells in enumerate(matrix):
        start = 0
        while start < len(cells):
            end = start
            while end < len(cells) and cells[end]:
                end += 1
            if end > start:
                path.rect(start + 2, count - row - 3, end - start, 1)
            start = end + 1
    canvas.drawPath(path, stroke=0, fill=1)


@lru_cache(maxsize=8)  # the same address stands at the foot of every page of a sheet
def _modules(text: str) -> tuple[bytearray, ...]:
    return segno.make(text, micro=False, error="l").matrix


@dataclass(frozen=True, slots=True)
class TextLook:
    """How words look."""

    size: float = LEAST_SIZE
    heavy: bool = False
    ink: Color = INK


def lines_of(text: str, room: float, look: TextLook) -> list[WordLine]:
    """Break a text into lines of at most `room` points."""
    return (
        broken_lines(text_block([measured_words(text, look.size, look.heavy)]), room)
        if text
        else []
    )


def set_words(
    canvas: Canvas | None, text: str, place: tuple[float, float], room: float, look: TextLook
) -> float:
    """Set a text in lines under a place, and return where the next line begins.

    Without a canvas it only tells where that would be.
    """
    return set_lines(canvas, lines_of(text, room, look), place, look.ink)


def set_lines(
    canvas: Canvas | None, lines: Sequence[WordLine], place: tuple[float, float], ink: Color
) -> float:
    """Set lines of one size under a place, and return where the next would begin."""
    x, top = place
    for line in lines:
        size = line[0].size
        if canvas:
            canvas.setFillColor(ink)
            _set_line(canvas, line, x, top - 0.9 * size)
        top -= LEADING * size
    return top


def line_text(line: WordLine) -> str:
    """Return the text of a line."""
    return "".join(" " * (word.space > 0) + word.text for word in line).removeprefix(" ")


def _set_line(canvas: Canvas, line: WordLine, x: float, y: float) -> None:
    """Set a line, the words of one weight together."""
    x -= line[0].space
    for heavy, alike in groupby(line, key=lambda word: word.bold):
        kept = list(alike)
        canvas.setFont((bold() if heavy else medium()).name, kept[0].size)
        canvas.drawString(x + kept[0].space, y, line_text(kept))
        x += kept[0].space + line_width(kept)
