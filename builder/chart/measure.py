"""The words of a chart broken into lines.

In: nodes and labels. Out: for a width, the lines and their height. Everything is measured once at
the nominal text size of 10 points; a layout is scaled as a whole afterwards.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from builder.chart.flow import Node
from builder.chart.fonts import LEADING, bold, medium
from builder.chart.gaps import SMALL, TEXT
from builder.model.knowledge import Signal


class Word(NamedTuple):
    """One word that is never broken."""

    text: str
    width: float
    size: float
    bold: bool
    tone: str
    space: float  # before it, unless it begins a line


@dataclass(frozen=True, slots=True)
class Words:
    """The words of one box or label; a paragraph begins a new line."""

    paragraphs: tuple[tuple[Word, ...], ...]

    @property
    def widest(self) -> float:
        """The widest word: no box may be narrower."""
        return max((word.width for words in self.paragraphs for word in words), default=0)


Broken = list[list[Word]]


def words_of(text: str, size: float, heavy: bool, tone: str = "") -> tuple[Word, ...]:
    """Measure the words of a text."""
    face = bold() if heavy else medium()
    space = face.width(" ", size)
    words = [word for word in text.split(" ") if word]  # a no-break space holds words together
    return tuple(Word(w, face.width(w, size), size, heavy, tone, space) for w in words)


def node_words(node: Node) -> Words:
    """Everything that stands in the box of a node."""
    return Words(tuple(words for words in _paragraphs(node) if words))


def _paragraphs(node: Node) -> Iterator[tuple[Word, ...]]:
    if node.caution:
        sign = "" if node.caution is Signal.NOTICE else "⚠ "
        yield words_of(f"{sign}{node.caution}", SMALL, True, node.caution.lower())
    number = words_of(node.number, TEXT, True, "number")
    text = words_of(node.text, TEXT, node.kind in ("fix", "start"))
    yield (
        number
        + text
        + words_of(node.minutes.replace(" ", "\N{NO-BREAK SPACE}"), SMALL, False, "small")
    )
    if node.when:
        yield words_of(f"With {node.when}", SMALL, False, "small")
    for note in node.notes:
        yield _note(note)


def _note(note: str) -> tuple[Word, ...]:
    *words, last = note.split()
    heavy = last.isdigit()
    return words_of(" ".join(words), SMALL, False, "small") + words_of(last, SMALL, heavy, "small")


def label_words(text: str) -> Words:
    """The words beside a line."""
    return Words((words_of(text, SMALL, True, "label"),) if text else ())


def broken(words: Words, width: float) -> Broken:
    """Break into lines no wider than `width`; a word that is wider stands alone."""
    lines: Broken = []
    for paragraph in words.paragraphs:
        line: list[Word] = []
        used = 0.0
        for word in paragraph:
            wanted = used + word.space + word.width
            if line and wanted > width:
                lines.append(line)
                line, used = [word], word.width
            else:
                used = wanted if line else word.width
                line.append(word)
        lines.append(line)
    return lines


def height(lines: Broken) -> float:
    """Height of lines set close."""
    return sum([LEADING * line[0].size for line in lines])


def width(lines: Sequence[Sequence[Word]]) -> float:
    """Width of the widest line."""
    return max((line_width(line) for line in lines), default=0)


def line_width(line: Sequence[Word]) -> float:
    """Width of one line."""
    return sum(word.space + word.width for word in line) - (line[0].space if line else 0)
