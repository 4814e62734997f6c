"""The words of a chart, measured, and broken into lines.

In: nodes and labels. Out: for a width, a height or the lines. Everything is measured once at the
nominal text size; a layout is scaled as a whole.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import lru_cache, partial

from builder.chart.flow import Edge, Node
from builder.chart.fonts import LEADING
from builder.chart.hazard_bar import MARK, SIGNAL_TONES, hazard_bar
from builder.chart.measured_word import MeasuredWord, WordLine, measured_words
from builder.chart.spacing import BADGE, FLAG, SIGNAL_GAP, SMALL, TAG_SIDE, TEXT
from builder.chart.step_function import StepFunction
from builder.wording.results import NO_BREAK

FLAGGED = ("check", "run", "action")  # their number has a dark ground where it is led to
CHANGE = "change"  # the tone of what a review says
# Of each paragraph: height of a line, the gap under the last, first space, and space and width of
# each word.
Measures = tuple[tuple[float, float, float, tuple[tuple[float, float], ...]], ...]


@dataclass(frozen=True, slots=True)
class TextBlock:
    """The words of one box or label; a paragraph begins a new line."""

    paragraphs: tuple[tuple[MeasuredWord, ...], ...]
    measures: Measures
    height: StepFunction[float] = field(compare=False)  # in lines no wider than a room
    widest: float  # of its words: no box may be narrower


def text_block(
    paragraphs: Iterator[tuple[MeasuredWord, ...]] | Sequence[tuple[MeasuredWord, ...]],
) -> TextBlock:
    """Put paragraphs together; empty ones are left out."""
    return _text_block(tuple(paragraph for paragraph in paragraphs if paragraph))


@lru_cache(maxsize=5_000)  # a tree is laid out several times, and its boxes mostly stay as they are
def _text_block(kept: tuple[tuple[MeasuredWord, ...], ...]) -> TextBlock:
    measures = tuple(
        (line_height(line), SIGNAL_GAP if is_bar(line) else 0.0, line[0].space,
         tuple([(w[5], w[1]) for w in line]))
        for line in kept
    )  # fmt: skip
    widest = max((max([w for _, w in words]) for *_, words in measures), default=0.0)
    return TextBlock(kept, measures, StepFunction(partial(_height, measures)), widest)


def is_bar(line: WordLine) -> bool:
    """Whether a line belongs to the bar of a box."""
    return line[0].tone in SIGNAL_TONES or line[0].tone.startswith(MARK)


def line_height(line: WordLine) -> float:
    """Height of every line of a paragraph."""
    return LEADING * max([word.size for word in line])


SheetOf = Callable[[str], str]  # from the number of a step to words, none if it stands here


def on_this_sheet(_number: str) -> str:
    """Every step stands on this sheet."""
    return ""


def box_text(
    node: Node, sheet_of: SheetOf = on_this_sheet, result: Edge | None = None
) -> TextBlock:
    """Everything that stands in the box of a node; first the result it is drawn inside of."""
    return text_block(_paragraphs(node, sheet_of, result))


def _paragraphs(
    node: Node, sheet_of: SheetOf, result: Edge | None
) -> Iterator[tuple[MeasuredWord, ...]]:
    if node.caution:
        yield hazard_bar(node.caution, node.hazards, node.marks)
    yield measured_words(node.change, SMALL, True, CHANGE)
    before = (*_label_words(result), *measured_words("→", SMALL, True)) if result else ()
    number = _number(node, BADGE if result else 0)
    yield (*before, *number, *measured_words(node.text, TEXT, node.kind == "start"))
    when = f"when {', '.join(node.when)}" if node.when else ""
    facts = filter(None, (node.work, *node.facts, when))
    yield measured_words(f"{NO_BREAK}· ".join(facts), SMALL, tone="small")
    yield measured_words(f"at {node.place}" if node.place else "", SMALL, tone="small")
    for note in (*node.ways_on, *node.notes):
        yield tuple(_note(note, sheet_of))


def _note(note: str, sheet_of: SheetOf) -> Iterator[MeasuredWord]:
    """Yield the words of a note, the numbers of steps in heavier type and with their sheet."""
    for word, step in _told(note):
        yield from measured_words(word, SMALL, step, "small")
        if step:
            yield from measured_words(sheet_of(word), SMALL, tone="small")


def _told(note: str) -> Iterator[tuple[str, bool]]:
    """Yield the words of a note, and whether each is the number of a step."""
    before = ""
    for word in note.split(" "):
        yield word, word.isdigit() and before in ("to", "or")
        before = word


def steps_named(node: Node) -> Iterator[str]:
    """Yield the numbers of the steps that the words in a box send the reader to."""
    for note in (*node.ways_on, *node.notes):
        yield from (word for word, step in _told(note) if step)


def _number(node: Node, more: float) -> tuple[MeasuredWord, ...]:
    """Measure the number of a box, with `more` room for its dark ground behind other words."""
    if node.kind not in FLAGGED and not node.led_to:
        return measured_words(node.number, TEXT, True, "number")
    return tuple(
        word._replace(width=word.width + FLAG, space=word.space + more)
        for word in measured_words(node.number, TEXT, True, "number")
    )


def label_text(edge: Edge) -> TextBlock:
    """The words beside a line: the result, and in lighter type what it means."""
    return text_block([_label_words(edge)])


def _label_words(edge: Edge) -> tuple[MeasuredWord, ...]:
    found = measured_words(edge.label, SMALL, True, "label")
    change = measured_words(edge.change, SMALL, True, CHANGE)
    if change:
        change = (change[0]._replace(space=change[0].space + TAG_SIDE), *change[1:])
    return found + measured_words(edge.means, SMALL, tone="small") + change


def _height(paragraphs: Measures, room: float) -> float:
    """Measure the words of paragraphs in lines no wider than `room`."""
    total = 0.0
    for leading, gap, first, measures in paragraphs:
        count, used = 1, -first
        for space, width in measures:
            used += space + width
            if used > room:
                count += 1
                used = width
        total += count * leading + gap
    return total


def broken_lines(words: TextBlock, room: float) -> list[WordLine]:
    """Break a block into the lines that its height counted."""
    lines: list[WordLine] = []
    for paragraph, (*_, first, measures) in zip(words.paragraphs, words.measures, strict=True):
        start, used = 0, -first
        for at, (space, width) in enumerate(measures):
            used += space + width
            if used > room:
                lines.append(paragraph[start:at])
                start, used = at, width
        lines.append(paragraph[start:])
    return lines
