"""How much of a query each entry covers.

In: the concepts of a query and the index. Out: `QueryCoverage`, in whole numbers: what each entry
gains, its share of the query, and how well its best phrase fits. The page does the same with the
percentages from here (`search-rank.js`).
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from builder.find.phrasebook import Concept, Tokens
from builder.find.symptom_index import SymptomIndex
from builder.find.word_forms import opposite, without_no

OPPOSITE_CREDIT = 50  # of 100: a phrase has `crank` where `no crank` was asked for
EVERYDAY_WEIGHT = 30  # percent that an everyday word counts
CLEAR_CREDIT = 50  # an entry has a concept if it covers more of it than this

Credits = dict[int, int]  # phrase or entry to credit, 1 to 100


@dataclass(frozen=True, slots=True)
class QueryCoverage:
    """What the entries cover of a query; only entries that cover something are in the maps."""

    words: int  # how many the query has, each by what it counts
    gain: Mapping[int, int]  # entry to the sum of rarity times credit
    credit: Mapping[int, int]  # entry to the sum of words times credit
    fit: Mapping[int, int]  # entry to how well its best phrase fits, 0 to 100
    phrase: Mapping[int, int]  # entry to that phrase

    def share(self, entry: int) -> int:
        """The share of the query that an entry covers, in percent."""
        return self.credit.get(entry, 0) // self.words if self.words else 0


def measure_coverage(concepts: Sequence[Concept], index: SymptomIndex) -> QueryCoverage:
    """Add up over the concepts of a query."""
    gain: Credits = {}
    credit: Credits = {}
    phrase_gain: Credits = {}
    phrase_credit: Credits = {}
    most = 0
    for concept in concepts:
        in_phrases = _covered_phrases(concept, index)
        best, raised = _by_entry(in_phrases, index)
        weight = concept_weight(concept, index)
        having = sum(covered > CLEAR_CREDIT for covered in best.values())
        rare = rarity(len(index.entries), having) * weight // 100
        most += rare * 100
        _add(gain, raised, rare)
        _add(credit, best, concept.words * weight)
        _add(phrase_gain, in_phrases, rare)
        _add(phrase_credit, in_phrases, 1)
    fit, phrase = _best_phrases(index, phrase_gain, phrase_credit, most)
    words = sum(concept.words * concept_weight(concept, index) for concept in concepts)
    return QueryCoverage(words, gain, credit, fit, phrase)


def concept_weight(concept: Concept, index: SymptomIndex) -> int:
    """Percent that a concept counts: an everyday word says little about which fault it is."""
    (first, *others), *alternatives = concept.alternatives
    alone = not others and not alternatives
    return EVERYDAY_WEIGHT if alone and without_no(first) in index.vocabulary.little else 100


def _best_phrases(
    index: SymptomIndex, gain: Credits, credit: Credits, most: int
) -> tuple[dict[int, int], dict[int, int]]:
    """How well the best phrase of each entry fits, and which one it is; the first of equals."""
    fit: dict[int, int] = {}
    best: dict[int, int] = {}
    for at in sorted(gain):
        phrase = index.phrases[at]
        fits = _harmonic_mean(gain[at] * 100 // most, min(credit[at] // len(phrase.concepts), 100))
        if fits > fit.get(phrase.entry, -1):
            fit[phrase.entry], best[phrase.entry] = fits, at
    return fit, best


def _harmonic_mean(recall: int, precision: int) -> int:
    """Of how much of the query and how much of the phrase is covered, both in percent."""
    return 2 * recall * precision // (recall + precision) if recall + precision else 0


def _covered_phrases(concept: Concept, index: SymptomIndex) -> Credits:
    """Phrases that a concept covers: the best of its alternatives.

    An alternative of several words that is there only in part counts the square of that part.
    """
    credits: Credits = {}
    for words in concept.alternatives:
        for phrase, total in _phrases_with(words, index).items():
            part = total // len(words)
            credit = part * part // 100 * index.phrases[phrase].weight // 100
            credits[phrase] = max(credit, credits.get(phrase, 0))
    return credits


def _phrases_with(words: Tokens, index: SymptomIndex) -> Credits:
    totals: Credits = {}
    for token in words:
        own = index.postings.get(token, ())
        _add(totals, dict.fromkeys(own, 100), 1)
        contrary = set(index.postings.get(opposite(token), ())) - set(own)
        _add(totals, dict.fromkeys(contrary, OPPOSITE_CREDIT), 1)
    return totals


def _by_entry(in_phrases: Credits, index: SymptomIndex) -> tuple[Credits, Credits]:
    """The best credit in each entry; and the same raised by a tenth for each of three more phrases.

    What a tree says again and again is what it is about.
    """
    best: Credits = {}
    count: Credits = {}
    for phrase, credit in in_phrases.items():
        entry = index.phrases[phrase].entry
        best[entry] = max(credit, best.get(entry, 0))
        count[entry] = count.get(entry, 0) + 1
    raised = {entry: credit * (9 + min(count[entry], 4)) // 10 for entry, credit in best.items()}
    return best, raised


def _add(totals: Credits, credits: Credits, times: int) -> None:
    for at, credit in credits.items():
        totals[at] = totals.get(at, 0) + credit * times


def rarity(entries: int, having: int) -> int:
    """How much a concept tells apart: 100 ln(1 + entries / entries that have it), rounded."""
    return math.floor(100 * math.log(1 + entries / max(1, having)) + 0.5)
