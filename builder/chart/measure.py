"""The words of a chart, measured, and broken into lines.

In: nodes and labels. Out: for a width, a height or the lines. Everything is measured once at the
nominal text size; a layout is scaled as a whole.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

from builder.chart.flow import Edge, Node
from builder.chart.fonts import LEADING, Face, bold, medium
from builder.chart.gaps import FLAG, LONGEST_WORD, SIGNAL_GAP, SMALL, TEXT
from builder.chart.results import NO_BREAK
from builder.model.knowledge import Signal

SIGNALS = frozenset(signal.lower() for signal in Signal)


class Word(NamedTuple):
    """A word, or a piece of one that is too long for any box."""

    text: str
    width: float
    size: float
    bold: bool
    tone: str
    space: float  # before it, unless it begins a line


Line = Sequence[Word]


@dataclass(frozen=True, slots=True)
class Words:
    """The words of one box or label; a paragraph begins a new line."""

    paragraphs: tuple[tuple[Word, ...], ...]
    measures: tuple[tuple[float, float, tuple[tuple[float, float], ...]], ...]
    """Of each paragraph: height of a line, first space, and space and width of each word."""

    @property
    def widest(self) -> float:
        """The widest word: no box may be narrower."""
        return max((word.width for words in self.paragraphs for word in words), default=0)


NO_WORDS = Words((), ())


def words(paragraphs: Iterator[tuple[Word, ...]] | Sequence[tuple[Word, ...]]) -> Words:
    """Put paragraphs together; empty ones are left out."""
    kept = tuple(paragraph for paragraph in paragraphs if paragraph)
    return Words(
        kept,
        tuple(
            (line_height(paragraph), paragraph[0].space, tuple([(w[5], w[1]) for w in paragraph]))
            for paragraph in kept
        ),
    )


def line_height(line: Line) -> float:
    """Height of every line of a paragraph; under a signal word a little more."""
    signal = SIGNAL_GAP if line[0].tone in SIGNALS else 0
    return LEADING * max([word.size for word in line]) + signal


def words_of(text: str, size: float, heavy: bool = False, tone: str = "") -> tuple[Word, ...]:
    """Measure the words of a text; a no-break space holds words together."""
    found: list[Word] = []
    for word in text.split(" "):
        if word:
            found += _word(word, size, heavy, tone)
    return tuple(found)


@lru_cache(maxsize=20_000)  # the trees of a shop share most of their words
def _word(text: str, size: float, heavy: bool, tone: str) -> tuple[Word, ...]:
    face = bold() if heavy else medium()
    word = Word(text, face.width(text, size), size, heavy, tone, face.width(" ", size))
    return (word,) if word.width <= LONGEST_WORD * size / TEXT else tuple(_broken_word(word, face))


def _broken_word(whole: Word, face: Face) -> Iterator[Word]:
    """Break a word that no box could hold, after a hyphen or a slash where there is one."""
    text, space = whole.text, whole.space
    while text:
        fits = len(text)
        while fits > 1 and face.width(text[:fits], TEXT) > LONGEST_WORD:
            fits -= 1
        soft = max(text.rfind("-", 0, fits), text.rfind("/", 0, fits)) + 1
        piece = text[: soft if soft and fits < len(text) else fits]
        yield whole._replace(text=piece, width=face.width(piece, whole.size), space=space)
        text, space = text[len(piece) :], 0.0


def node_words(node: Node) -> Words:
    """Everything that stands in the box of a node."""
    return words(_paragraphs(node))


def _paragraphs(node: Node) -> Iterator[tuple[Word, ...]]:
    if node.caution:
        sign = "" if node.caution is Signal.NOTICE else "⚠ "
        yield words_of(f"{sign}{node.caution}", SMALL, True, node.caution.lower())
    yield _number(node) + words_of(node.text, TEXT, node.kind == "start")
    facts = (*node.facts, f"when {node.when}") if node.when else node.facts
    yield words_of(f"{NO_BREAK}· ".join(facts), SMALL, tone="small")
    for note in (*node.ways_on, *node.notes):
        yield tuple(_note(note))


def _note(note: str) -> Iterator[Word]:
    """Yield the words of a note, the numbers of steps in heavier type."""
    before = ""
    for word in note.split(" "):
        heavy = word.isdigit() and before in ("to", "or")
        yield from words_of(word, SMALL, heavy, "small")
        before = word


def _number(node: Node) -> tuple[Word, ...]:
    room = FLAG if node.kind in ("check", "action") else 0
    return tuple(
        word._replace(width=word.width + room)
        for word in words_of(node.number, TEXT, True, "number")
    )


def label_words(edge: Edge) -> Words:
    """The words beside a line: the result, and in lighter type what it means."""
    found = words_of(edge.label, SMALL, True, "label") + words_of(edge.means, SMALL, tone="small")
    return words([found]) if found else NO_WORDS


def height(words: Words, room: float) -> float:
    """Height of the words in lines no wider than `room`; no word is wider than that."""
    total = 0.0
    for leading, first, measures in words.measures:
        count, used = 1, -first
        for space, width in measures:
            used += space + width
            if used > room:
                count += 1
                used = width
        total += count * leading
    return total


def broken(words: Words, room: float) -> list[Line]:
    """Break the words into the lines that `height` counted."""
    lines: list[Line] = []
    for paragraph, (_, first, measures) in zip(words.paragraphs, words.measures, strict=True):
        start, used = 0, -first
        for at, (space, width) in enumerate(measures):
            used += space + width
            if used > room:
                lines.append(paragraph[start:at])
                start, used = at, width
        lines.append(paragraph[start:])
    return lines


def line_width(line: Line) -> float:
    """Width of one line."""
    return sum([word.space + word.width for word in line]) - line[0].space
