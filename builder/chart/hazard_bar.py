"""The bar at the top of a box: the signal word and its hazards.

In: the signal word, the short names of the hazards, gravest first, and their signs. Out: measured
words. Every hazard is named; where a key explains the signs, the gravest in words and the others by
their signs.
"""

from collections.abc import Sequence

from builder.chart.fonts import bold
from builder.chart.hazard_marks import HIGH, WIDE, HazardMark
from builder.chart.measured_word import MeasuredWord, measured_words
from builder.chart.spacing import SMALL
from builder.model.knowledge import Signal
from builder.wording.results import NO_BREAK

SIGNAL_TONES = frozenset(signal.lower() for signal in Signal)
MARK = "mark "  # before the picture and the letter of a sign, in the tone of its run
MARK_HEIGHT = 1.05  # of a sign, in ems


def hazard_bar(
    signal: Signal, hazards: Sequence[str], marks: Sequence[HazardMark] = ()
) -> tuple[MeasuredWord, ...]:
    """Measure a bar; NOTICE is for things and has no sign (ANSI Z535.4)."""
    sign = "" if signal is Signal.NOTICE else f"⚠{NO_BREAK}"
    tone = signal.lower()
    names = "; ".join(hazards[:1] if marks else hazards)
    words = measured_words(f"{sign}{signal}", SMALL, heavy=True, tone=tone)
    words += measured_words(names, SMALL, tone=tone)
    return words + tuple(mark_word(mark, SMALL) for mark in marks[1:])


def mark_word(mark: HazardMark, size: float) -> MeasuredWord:
    """Measure the sign of a hazard as a word."""
    wide = mark_width(size) + bold().width(mark.letter, size)
    tone = f"{MARK}{mark.picture} {mark.letter}"
    return MeasuredWord(mark.letter, wide, size, True, tone, 0.3 * size)


def mark_width(size: float) -> float:
    """Width of a sign without its letter."""
    return MARK_HEIGHT * size * WIDE / HIGH
