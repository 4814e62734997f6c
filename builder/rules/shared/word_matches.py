"""Phrases of a list of words, found in published text.

In: texts, and phrases with what to write instead. Out: every place of one. It is fast where nothing
is found: most trees have none of hundreds of phrases.
"""

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache
from itertools import pairwise
from string import punctuation
from typing import NamedTuple

from builder.model.knowledge import Word
from builder.model.text import Position, Text
from builder.rules.shared.published_text import position_in

WORD = re.compile(r"[^\W_]+(?:'[^\W_]+)*")
PUNCTUATION = punctuation + "–—…“”·→"
# By its only word or its last two, which are rarer than the first: the phrase as the list has it,
# and with spaces only.
PhraseIndex = Mapping[str | tuple[str, str], list[tuple[str, str]]]


class WordMatch(NamedTuple):
    """One place of a phrase."""

    at: Position
    words: str  # as the text has them
    entry: Word  # as the list has it


def word_matches(texts: Sequence[Text], words: Mapping[str, Word]) -> Iterator[WordMatch]:
    """Yield every place of a phrase in the texts; phrases in capitals match only capitals."""
    candidates = _candidates("\n".join(texts), _index(tuple(words))) if words else []
    for text in texts if candidates else ():
        plain = _plain(text)
        for phrase in candidates:
            for match in _pattern(phrase).finditer(plain):
                found = text[match.start() : match.end()]
                if found == phrase or not phrase.isupper():
                    yield WordMatch(
                        position_in(text, match.start(), len(found)), found, words[phrase]
                    )


def _candidates(text: str, index: PhraseIndex) -> list[str]:
    """Return the phrase that a text may have; most trees have none, and this test is fast."""
    plain, words = _searchable(text)
    ends = index.keys() & words
    return sorted(phrase for end in ends for phrase, spaced in index[end] if spaced in plain)


@lru_cache(maxsize=1)  # several lists are searched for in the same text
def _searchable(text: str) -> tuple[str, frozenset[str | tuple[str, str]]]:
    """Return a text with its words spaced evenly, and every word and every two in a row."""
    plain = _spaced(text)
    words = [word.strip(PUNCTUATION) for word in plain.split(" ")]
    return plain, frozenset([*words, *pairwise(words)])


@lru_cache(maxsize=2)
def _index(phrases: tuple[str, ...]) -> PhraseIndex:
    index: dict[str | tuple[str, str], list[tuple[str, str]]] = defaultdict(list)
    for phrase in phrases:
        words = WORD.findall(_plain(phrase))
        if words:
            ends = words[0] if len(words) == 1 else (words[-2], words[-1])
            index[ends].append((phrase, _spaced(phrase)))
    return dict(index)


@lru_cache(maxsize=1000)
def _pattern(phrase: str) -> re.Pattern[str]:
    """Return the pattern of a phrase phrase: whole words with any whitespace between them."""
    words = r"\s+".join(map(re.escape, _plain(phrase).split()))
    return re.compile(rf"(?<![\w'-]){words}(?![\w'-])")


def _spaced(text: str) -> str:
    """Return the words of a text with one space between them, also where it has `-` or `/`."""
    return " ".join(_plain(text).replace("-", " ").replace("/", " ").split())


def _plain(text: str) -> str:
    """Return the text in lowercase, of the same length, with one kind of apostrophe."""
    small = text.lower()
    return (small if len(small) == len(text) else text).replace("’", "'")
