"""Whether a query tells of danger, and the safety lines for it.

In: the words of a query. Out: the lines, the gravest first. Words are compared as plain forms
(`smelt` is `smell`) without their endings; small words are passed over. The words of a sign stand
near each other, a phrase stands as it is. The page does the same with the signs from here
(`search-safety.js`).
"""

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache

from builder.find.danger_words import WORD_GROUPS
from builder.find.dangers import DANGERS
from builder.find.plain_forms import PLAIN_FORMS, SMALL_WORDS, plain_stems
from builder.find.word_forms import split_words

NEAR = 7  # words from the first to the last of a sign
TAKEN_OUT = "-"  # stands where a harmless phrase stood
ANY_WORDS = "~"  # in a phrase: so many words at most may stand there
MOST_ANY = 2
MOST_LINES = 2

Phrase = tuple[str, ...]  # stems
Part = Mapping[str, tuple[Phrase, ...]]  # any phrases, by their first words


@dataclass(frozen=True, slots=True)
class Sign:
    """Words that tell of danger when all of them stand near each other."""

    parts: tuple[Part, ...]
    unless: Part  # not near these


@dataclass(frozen=True, slots=True)
class Harmless:
    """Phrases that are no danger."""

    first: Part
    behind: Part  # that stand right after them; empty for the first alone


@dataclass(frozen=True, slots=True)
class DangerSigns:
    """What is looked for, for one safety line."""

    text: str
    signs: tuple[Sign, ...]
    harmless: tuple[Harmless, ...]


@cache
def danger_signs() -> tuple[DangerSigns, ...]:
    """Each safety line with its signs, the gravest first."""
    return tuple(
        DangerSigns(
            it.text,
            tuple(map(_read_sign, _entries(it.signs))),
            tuple(map(_read_harmless, _entries(it.harmless))),
        )
        for it in DANGERS
    )


def danger_words() -> frozenset[str]:
    """The words of the signs: none of them is misspelled."""
    texts = (text for it in DANGERS for text in (it.signs, it.harmless))
    phrases = _entries(";".join((*WORD_GROUPS.values(), *texts)), "[,;+]| unless ")
    forms = (SMALL_WORDS, *PLAIN_FORMS.values(), *PLAIN_FORMS)
    said = (*(set(phrases) - WORD_GROUPS.keys()), *forms)
    return frozenset(word for text in said for word in split_words(text))


def _entries(text: str, between: str = ";") -> list[str]:
    """What stands between marks."""
    return [each for it in re.split(between, " ".join(text.split())) if (each := it.strip())]


def _read_sign(text: str) -> Sign:
    together, _, unless = text.partition(" unless ")
    return Sign(tuple(map(_part, together.split(","))), _part(unless))


def _read_harmless(text: str) -> Harmless:
    first, _, behind = text.partition("+")
    return Harmless(_part(first), _part(behind))


def _part(text: str) -> Part:
    part: dict[str, tuple[Phrase, ...]] = {}
    for phrase in _phrases(text):
        part[phrase[0]] = (*part.get(phrase[0], ()), phrase)
    return part


@cache
def _phrases(text: str) -> frozenset[Phrase]:
    """Phrases, with those of a group in its place."""
    each = frozenset(_entries(text, ","))
    alone = (tuple(plain_stems(phrase.split())) for phrase in each - WORD_GROUPS.keys())
    of_groups = (_phrases(WORD_GROUPS[name]) for name in each & WORD_GROUPS.keys())
    return frozenset(alone).union(*of_groups)


def safety_lines(words: Iterable[str]) -> tuple[str, ...]:
    """Return the lines for the words of a query, folded and corrected; () if there is no danger."""
    stems = plain_stems(words)
    return tuple(it.text for it in danger_signs() if _tells_of(it, stems))[:MOST_LINES]


def _tells_of(danger: DangerSigns, stems: Sequence[str]) -> bool:
    left = _without_harmless(danger, stems)
    return any(_shows(sign, left) for sign in danger.signs)


def _without_harmless(danger: DangerSigns, stems: Sequence[str]) -> Sequence[str]:
    left = list(stems)
    for harmless in danger.harmless:
        behind = _places_of(harmless.behind, stems)
        for start, end in _places_of(harmless.first, stems):
            ends = [last for at, last in behind if at == end] if harmless.behind else [end]
            for last in ends:
                left[start:last] = [TAKEN_OUT] * (last - start)
    return left


def _shows(sign: Sign, stems: Sequence[str]) -> bool:
    """Whether every part of a sign stands near its first, and nothing that takes it away."""
    starts = _starts(sign.parts[0], stems)
    for part in sign.parts[1:]:
        places = _starts(part, stems) if starts else []
        starts = [start for start in starts if _is_near(start, places)]
    unless = _starts(sign.unless, stems) if starts else []
    return any(not _is_near(start, unless) for start in starts)


def _starts(part: Part, stems: Sequence[str]) -> list[int]:
    return [at for at, _ in _places_of(part, stems)]


def _is_near(start: int, places: Iterable[int]) -> bool:
    return any(abs(at - start) < NEAR for at in places)


def _places_of(part: Part, stems: Sequence[str]) -> list[tuple[int, int]]:
    """Where the phrases of a part begin and end."""
    begun = ((at, phrase) for at, stem in enumerate(stems) for phrase in part.get(stem, ()))
    each = ((at, _end_of(phrase, stems, at)) for at, phrase in begun)
    return [(at, end) for at, end in each if end]


def _end_of(phrase: Phrase, stems: Sequence[str], start: int) -> int:
    """Where a phrase ends whose first word stands there; 0 if the others aren't there."""
    end = start + 1
    most = 1  # words among which the next must be
    for word in phrase[1:]:
        if word == ANY_WORDS:
            most = 1 + MOST_ANY
        elif word in stems[end : end + most]:
            end, most = stems.index(word, end) + 1, 1
        else:
            return 0
    return end
