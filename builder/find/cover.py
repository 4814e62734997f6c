"""How much of a query each entry covers.

In: the concepts of a query and the index. Out: `Cover`, in whole numbers: what each entry gains,
its share of the query, and how well its best phrase fits. Mirrored by `web/search-rank.js`.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from builder.find.index import Index
from builder.find.phrasebook import Concept, Tokens
from builder.find.words import flipped

OPPOSITE = 50  # of 100: a phrase has `crank` where `no crank` was asked for

LIGHT = 30  # percent that an everyday word counts

Credits = dict[int, int]  # phrase or entry to credit, 1 to 100


@dataclass(frozen=True, slots=True)
class Cover:
    """What the entries cover of a query; only entries that cover something are in the maps."""

    words: int  # how many the query has, each by what it counts
    gain: Mapping[int, int]  # entry to the sum of rarity times credit
    credit: Mapping[int, int]  # entry to the sum of words times credit
    fit: Mapping[int, int]  # entry to how well its best phrase fits, 0 to 100
    phrase: Mapping[int, int]  # entry to that phrase

    def share(self, entry: int) -> int:
        """The share of the query that an entry covers, in percent."""
        return self.credit.get(entry, 0) // self.words if self.words else 0


def cover(parts: Sequence[Concept], index: Index) -> Cover:
    """Add up over the concepts of a query."""
    gain: dict[int, int] = {}
    credit: dict[int, int] = {}
    phrase_gain: dict[int, int] = {}
    phrase_credit: dict[int, int] = {}
    most = 0
    for part in parts:
        in_phrases = covered_phrases(part, index)
        best, often = _by_entry(in_phrases, index)
        rare = rarity(len(index.entries), sum(found > 50 for found in best.values()))
        counts = weight(part, index)
        rare = rare * counts // 100
        most += rare * 100
        _add(gain, often, rare)
        _add(credit, best, part.words * counts)
        _add(phrase_gain, in_phrases, rare)
        _add(phrase_credit, in_phrases, 1)
    fit, phrase = _best_phrases(index, phrase_gain, phrase_credit, most)
    words = sum(part.words * weight(part, index) for part in parts)
    return Cover(words, gain, credit, fit, phrase)


def weight(part: Concept, index: Index) -> int:
    """Percent that a concept counts: an everyday word says little about which fault it is."""
    alone = len(part.alternatives) == 1 and len(part.alternatives[0]) == 1
    said = part.alternatives[0][0].removeprefix("!") if alone else ""
    return LIGHT if said in index.little else 100


def _best_phrases(
    index: Index, gain: Credits, credit: Credits, most: int
) -> tuple[dict[int, int], dict[int, int]]:
    """How well the best phrase of each entry fits, and which one it is; the first of equals."""
    fit: dict[int, int] = {}
    best: dict[int, int] = {}
    for at in sorted(gain):
        phrase = index.phrases[at]
        fits = _fit(gain[at] * 100 // most, credit[at] // phrase.length)
        if fits > fit.get(phrase.entry, -1):
            fit[phrase.entry], best[phrase.entry] = fits, at
    return fit, best


def covered_phrases(part: Concept, index: Index) -> Credits:
    """Phrases that a concept covers: the best of its alternatives.

    An alternative of several words that is there only in part counts the square of that part.
    """
    credits: Credits = {}
    for words in part.alternatives:
        for phrase, total in _words_found(words, index).items():
            found = total // len(words)
            credit = found if len(words) == 1 and found == 100 else found * found // 100
            credit = credit * index.phrases[phrase].weight // 100
            credits[phrase] = max(credit, credits.get(phrase, 0))
    return credits


def _words_found(words: Tokens, index: Index) -> Credits:
    totals: Credits = {}
    for token in words:
        own = index.postings.get(token, ())
        _add(totals, dict.fromkeys(own, 100), 1)
        opposite = set(index.postings.get(flipped(token), ())) - set(own)
        _add(totals, dict.fromkeys(opposite, OPPOSITE), 1)
    return totals


def _by_entry(in_phrases: Credits, index: Index) -> tuple[Credits, Credits]:
    """The best credit in each entry; and the same raised by a tenth for each of three more phrases.

    What a tree says again and again is what it is about.
    """
    best: Credits = {}
    count: Credits = {}
    for phrase, credit in in_phrases.items():
        entry = index.phrases[phrase].entry
        best[entry] = max(credit, best.get(entry, 0))
        count[entry] = count.get(entry, 0) + 1
    often = {entry: credit * (9 + min(count[entry], 4)) // 10 for entry, credit in best.items()}
    return best, often


def _add(totals: dict[int, int], credits: Credits, times: int) -> None:
    for at, credit in credits.items():
        totals[at] = totals.get(at, 0) + credit * times


def rarity(entries: int, having: int) -> int:
    """How much a concept tells apart: 100 ln(1 + entries / entries that have it), rounded."""
    return math.floor(100 * math.log(1 + entries / max(1, having)) + 0.5)


def _fit(recall: int, precision: int) -> int:
    """The harmonic mean of how much of the query and how much of the phrase is covered."""
    precision = min(precision, 100)
    return 2 * recall * precision // (recall + precision) if recall + precision else 0
