"""The cautions of a sheet as a strip: the sign of each hazard, its signal word, its name.

In: cautions, gravest first, and a width. Out: marks on a canvas and their height. The strip is
the key to the signs in the boxes; as many cautions stand side by side as makes it lowest.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from reportlab.pdfgen.canvas import Canvas

from builder.chart.chart import Box, Rect, Run, Shape
from builder.chart.fonts import LEADING
from builder.chart.hazard_bar import mark_word
from builder.chart.hazard_marks import HazardMark
from builder.chart.measured_word import measured_words
from builder.chart.text_block import TextBlock, broken_lines, text_block
from builder.model.knowledge import Signal
from builder.prints.drawing import INK, SIGNAL_COLORS, draw_runs
from builder.prints.sheet import LEAST_SIZE, TextLook, set_lines, set_words

CHIP = 74.0  # width of the ground of a sign and its signal word
BESIDE = 5.0  # from it to the words
GAP = 12.0  # between two cautions side by side
NARROWEST = 190.0  # of a caution beside another
MOST = 4  # side by side


@dataclass(frozen=True, slots=True)
class PrintedCaution:
    """A hazard of the tree as the strip has it."""

    mark: HazardMark
    signal: Signal
    short: str  # as the bars of the boxes name it
    text: str
    brief: str  # the same without the harm, for a sheet with more cautions than room


def draw_cautions(
    canvas: Canvas | None, cautions: Sequence[PrintedCaution], place: tuple[float, float],
    room: float,
) -> float:  # fmt: skip
    """Draw a strip under a place and return how high it is; without a canvas only measure."""
    x, top = place
    y = top
    columns = _columns(tuple(cautions), room)
    wide = _cell_width(room, columns)
    for row in _rows(cautions, columns):
        if canvas:
            for at, caution in enumerate(row):
                _draw_cell(canvas, caution, (x + at * (wide + GAP), y), wide)
        y -= _row_height(row, wide)
    return top - y


def draw_key(
    canvas: Canvas | None, cautions: Sequence[PrintedCaution], foot: tuple[float, float],
    room: float,
) -> float:  # fmt: skip
    """Name above a foot what the signs on a further sheet mean, and return how high that is."""
    names = [replace(one, text="") for one in cautions]
    high = draw_cautions(None, names, foot, room)
    draw_cautions(canvas, names, (foot[0], foot[1] + high), room)
    return high


def _rows(cautions: Sequence[PrintedCaution], columns: int) -> Iterator[Sequence[PrintedCaution]]:
    for start in range(0, len(cautions), columns):
        yield cautions[start : start + columns]


def _cell_width(room: float, columns: int) -> float:
    return (room + GAP) / columns - GAP


@lru_cache(maxsize=500)  # a layout asks for the height at every width that the strip may have
def _columns(cautions: tuple[PrintedCaution, ...], room: float) -> int:
    """Return how many cautions stand side by side where the strip is lowest."""
    possible = [1, *(n for n in range(2, MOST + 1) if _cell_width(room, n) >= NARROWEST)]

    def height(columns: int) -> float:
        wide = _cell_width(room, columns)
        return sum(_row_height(row, wide) for row in _rows(cautions, columns))

    return min(possible, key=height)


def _row_height(row: Sequence[PrintedCaution], wide: float) -> float:
    lines = max(len(broken_lines(_words(one), wide - CHIP - BESIDE)) for one in row)
    return lines * LEADING * LEAST_SIZE + 1


def _draw_cell(
    canvas: Canvas, caution: PrintedCaution, place: tuple[float, float], wide: float
) -> None:
    """Set sign and signal word on its ground, and the caution beside it."""
    x, top = place
    high = LEADING * LEAST_SIZE
    ground, ink = SIGNAL_COLORS[caution.signal]
    canvas.setFillColor(ground)
    canvas.rect(x, top - high + 0.2, CHIP, high - 0.4, stroke=0, fill=1)
    word = mark_word(caution.mark, LEAST_SIZE)
    canvas.saveState()
    canvas.translate(x + 2, top - 0.9 * LEAST_SIZE)
    chip = Box("", "", Shape.PROCESS, Rect(0, 0, CHIP, high), signal=caution.signal)
    draw_runs(canvas, [Run(word.text, 0, 0, word.size, True, word.width, word.tone)], chip)
    canvas.restoreState()
    look = TextLook(heavy=True, ink=ink)
    set_words(canvas, str(caution.signal), (x + word.width + 4, top - 0.5), CHIP, look)
    lines = broken_lines(_words(caution), wide - CHIP - BESIDE)
    set_lines(canvas, lines, (x + CHIP + BESIDE, top), INK)


@lru_cache(maxsize=500)
def _words(caution: PrintedCaution) -> TextBlock:
    colon = ":" if caution.text else ""
    name = measured_words(f"{caution.short}{colon}", LEAST_SIZE, heavy=True)
    return text_block([(*name, *measured_words(caution.text, LEAST_SIZE))])
