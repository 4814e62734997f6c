"""Whether a query tells of danger, and the safety lines for it.

In: the words of a query. Out: the lines, the gravest first. Words are compared without their
endings. The words of a sign stand near each other, a phrase stands as it is. The page does the same
with the signs from here (`search-safety.js`).
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache

from builder.find.common_words import EVERYDAY_WORDS
from builder.find.danger_words import HARMLESS, WORD_GROUPS
from builder.find.dangers import DANGERS
from builder.find.word_forms import split_words, stem_word

NEAR = 7  # words from the first to the last of a sign
TAKEN_OUT = "-"  # stands where a harmless phrase stood
MOST_LINES = 2

Phrase = tuple[str, ...]  # stems
Part = tuple[Phrase, ...]  # any of them


@dataclass(frozen=True, slots=True)
class Sign:
    """Words that tell of danger when all of them stand near each other."""

    parts: tuple[Part, ...]
    unless: Part = ()  # not with these


@cache
def danger_signs() -> Mapping[str, tuple[Sign, ...]]:
    """Each safety line with its signs, the gravest first."""
    return {it.text: tuple(map(_read_sign, it.signs.split(";"))) for it in DANGERS}


@cache
def harmless_phrases() -> Part:
    """Phrases that are no danger, the longest first."""
    return tuple(sorted(_phrases(HARMLESS), key=lambda phrase: (-len(phrase), phrase)))


def danger_words() -> frozenset[str]:
    """The words of the signs, plain English apart: none of them is misspelled."""
    signs = " ".join(";".join(it.signs for it in DANGERS).split())
    parts = signs.replace(" unless ", ",").replace(";", ",")
    texts = ",".join((HARMLESS, *WORD_GROUPS.values(), parts))
    phrases = {phrase.strip() for phrase in texts.split(",")} - WORD_GROUPS.keys()
    return frozenset(word for phrase in phrases for word in split_words(phrase)) - EVERYDAY_WORDS


def _read_sign(text: str) -> Sign:
    together, _, unless = " ".join(text.split()).partition(" unless ")
    parts = tuple(_part(part) for part in together.split(","))
    return Sign(parts, _part(unless) if unless else ())


def _part(text: str) -> Part:
    """Phrases, with those of a group in its place."""
    each = (WORD_GROUPS.get(phrase.strip(), phrase) for phrase in text.split(","))
    return tuple(phrase for texts in each for phrase in _phrases(texts))


def _phrases(text: str) -> Part:
    return tuple(tuple(map(stem_word, split_words(each))) for each in text.split(","))


def safety_lines(words: Iterable[str]) -> tuple[str, ...]:
    """Return the lines for the words of a query, folded and corrected; () if there is no danger."""
    stems = _without_harmless([stem_word(word) for word in words])
    lines = (
        text for text, signs in danger_signs().items() if any(_shows(it, stems) for it in signs)
    )
    return tuple(lines)[:MOST_LINES]


def _without_harmless(stems: list[str]) -> list[str]:
    for phrase in harmless_phrases():
        for at in _places(phrase, stems):
            stems[at : at + len(phrase)] = [TAKEN_OUT] * len(phrase)
    return stems


def _shows(sign: Sign, stems: Sequence[str]) -> bool:
    """Whether every part of a sign stands near the first, and nothing that takes it away."""
    if _places_of(sign.unless, stems):
        return False
    first, *others = sign.parts
    return any(
        all(any(abs(at - start) < NEAR for at in _places_of(part, stems)) for part in others)
        for start in _places_of(first, stems)
    )


def _places_of(part: Part, stems: Sequence[str]) -> list[int]:
    return [at for phrase in part for at in _places(phrase, stems)]


def _places(phrase: Phrase, stems: Sequence[str]) -> list[int]:
    length = len(phrase)
    return [at for at in range(len(stems) - length + 1) if tuple(stems[at : at + length]) == phrase]
