"""Single words, measured at the nominal text size.

In: a text, its size and weight. Out: its words with their widths; one too long for any box comes in
pieces.
"""

from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import NamedTuple

from builder.chart.fonts import Face, bold, medium
from builder.chart.spacing import LONGEST_WORD, TEXT


class MeasuredWord(NamedTuple):
    """A word, or a piece of one that is too long for any box."""

    text: str
    width: float
    size: float
    bold: bool
    tone: str
    space: float  # before it, unless it begins a line


WordLine = Sequence[MeasuredWord]


def measured_words(
    text: str, size: float, heavy: bool = False, tone: str = ""
) -> tuple[MeasuredWord, ...]:
    """Measure the words of a text; a no-break space holds words together."""
    found: list[MeasuredWord] = []
    for word in text.split(" "):
        if word:
            found += _word(word, size, heavy, tone)
    return tuple(found)


@lru_cache(maxsize=20_000)  # the trees of a shop share most of their words
def _word(text: str, size: float, heavy: bool, tone: str) -> tuple[MeasuredWord, ...]:
    face = bold() if heavy else medium()
    word = MeasuredWord(text, face.width(text, size), size, heavy, tone, face.width(" ", size))
    return (word,) if word.width <= LONGEST_WORD * size / TEXT else tuple(_broken_word(word, face))


def _broken_word(whole: MeasuredWord, face: Face) -> Iterator[MeasuredWord]:
    """Break a word that no box could hold, after a hyphen or a slash where there is one."""
    text, space = whole.text, whole.space
    while text:
        fits = len(text)
        while face.width(text[:fits], TEXT) > LONGEST_WORD:
            fits -= 1
        soft = max(text.rfind("-", 0, fits), text.rfind("/", 0, fits)) + 1
        piece = text[: soft if soft and fits < len(text) else fits]
        yield whole._replace(text=piece, width=face.width(piece, whole.size), space=space)
        text, space = text[len(piece) :], 0.0


def line_width(line: WordLine) -> float:
    """Width of one line."""
    return sum([word.space + word.width for word in line]) - line[0].space
