"""The cautions of a sheet as a strip: for each signal word its hazards, each by its sign and name.

In: cautions, gravest first, and a width. Out: marks on a canvas and their height. The strip is
the key to the signs in the boxes.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import groupby

from reportlab.pdfgen.canvas import Canvas

from builder.chart.chart import Run
from builder.chart.fonts import LEADING
from builder.chart.hazard_bar import mark_word
from builder.chart.hazard_marks import HazardMark
from builder.chart.measured_word import MeasuredWord, WordLine, line_width, measured_words
from builder.chart.text_block import broken_lines, text_block
from builder.model.knowledge import Signal
from builder.prints.drawing import SIGNAL_COLORS, draw_runs
from builder.prints.sheet import LEAST_SIZE, TextLook, set_words

CHIP = 54.0  # width of the ground of a signal word
BESIDE = 5.0  # from it to the words
GAP = 12.0  # between two hazards on one line
LINE = LEADING * LEAST_SIZE


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
    for signal, alike in groupby(cautions, key=lambda one: one.signal):
        lines = list(_lines(alike, room - CHIP - BESIDE))
        if canvas:
            _draw_chip(canvas, signal, (x, y))
            for number, line in enumerate(lines):
                _draw_line(canvas, line, (x + CHIP + BESIDE, y - number * LINE))
        y -= len(lines) * LINE
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


def _lines(cautions: Iterable[PrintedCaution], room: float) -> Iterator[WordLine]:
    """Yield hazards in lines; one goes on in the line of the last where all of it fits there."""
    line: WordLine = ()
    for words in map(_words, cautions):
        if line and line_width(line) + GAP + line_width(words) <= room:
            line = (*line, words[0]._replace(space=GAP), *words[1:])
            continue
        if line:
            yield line
        *whole, line = broken_lines(text_block([words]), room)
        yield from whole
    yield line


def _draw_chip(canvas: Canvas, signal: Signal, place: tuple[float, float]) -> None:
    """Set a signal word on its ground."""
    x, top = place
    ground, ink = SIGNAL_COLORS[signal]
    canvas.setFillColor(ground)
    canvas.rect(x, top - LINE + 0.2, CHIP, LINE - 0.4, stroke=0, fill=1)
    set_words(canvas, str(signal), (x + 3, top - 0.5), CHIP, TextLook(heavy=True, ink=ink))


def _draw_line(canvas: Canvas, line: WordLine, place: tuple[float, float]) -> None:
    canvas.saveState()
    canvas.translate(place[0], place[1] - 0.9 * LEAST_SIZE)
    x = -line[0].space
    for word in line:
        x += word.space
        draw_runs(canvas, [Run(word.text, x, 0, word.size, word.bold, word.width, word.tone)])
        x += word.width
    canvas.restoreState()


@lru_cache(maxsize=500)  # a layout asks for the height at every width that the strip may have
def _words(caution: PrintedCaution) -> tuple[MeasuredWord, ...]:
    colon = ":" if caution.text else ""
    name = measured_words(f"{caution.short}{colon}", LEAST_SIZE, heavy=bool(colon))
    text = measured_words(caution.text, LEAST_SIZE)
    return (mark_word(caution.mark, LEAST_SIZE), *name, *text)
