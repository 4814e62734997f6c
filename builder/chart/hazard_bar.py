"""The bar at the top of a box: the signal word and its hazards in short.

In: the signal word and the short names of the hazards, gravest first. Out: measured words, then as
many of them as a width holds; in a narrow box the names stand on a line of their own.
"""

from collections.abc import Sequence

from builder.chart.measured_word import MeasuredWord, WordLine, line_width, measured_words
from builder.chart.spacing import SMALL
from builder.model.knowledge import Signal
from builder.wording.results import NO_BREAK

SIGNAL_TONES = frozenset(signal.lower() for signal in Signal)


def hazard_bar(signal: Signal, hazards: Sequence[str]) -> tuple[MeasuredWord, ...]:
    """Measure a bar; NOTICE is for things and has no sign (ANSI Z535.4)."""
    sign = "" if signal is Signal.NOTICE else f"⚠{NO_BREAK}"
    tone = signal.lower()
    names = measured_words(", ".join(hazards), SMALL, tone=tone)
    return measured_words(f"{sign}{signal}", SMALL, heavy=True, tone=tone) + names


def one_line_width(bar: WordLine) -> float:
    """Return the width from which the signal word and a whole name stand on one line."""
    ends = _ends(bar)
    line = _cut(bar, ends[0], "", len(ends)) if ends else bar
    return line_width(line) if len(bar) > 1 else 0


def shortened_bar(bar: WordLine, room: float) -> WordLine:
    """Return the names that fit, and how many more there are; if not even one does, its start."""
    if line_width(bar) <= room:
        return bar
    ends = _ends(bar)
    for named in range(len(ends), 0, -1):
        line = _cut(bar, ends[named - 1], "", len(ends) + 1 - named)
        if line_width(line) <= room:
            return line
    least = 0 if bar[0].bold else -1  # the signal word is never cut
    for last in range(ends[0] if ends else len(bar) - 1, least, -1):
        line = _cut(bar, last, "…", 0)
        if line_width(line) <= room:
            return line
    return bar[:1]


def _ends(bar: WordLine) -> list[int]:
    """Return the words at which names end, but for the last name."""
    return [at for at, word in enumerate(bar) if word.text.endswith(",")]


def _cut(bar: WordLine, last: int, ending: str, more: int) -> WordLine:
    """End a bar at a word, with the count of the hazards that are not named."""
    word = bar[last]
    text = word.text.removesuffix(",") + ending + (f"{NO_BREAK}+{more}" if more else "")
    return (*bar[:last], *measured_words(text, word.size, word.bold, word.tone))
