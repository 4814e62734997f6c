"""How much of a query each entry covers.

In: the concepts of a query and the index. Out: `QueryCoverage`, in whole numbers: what each entry
gains, its share of the query, how well its best phrase fits, and which subjects and complaints it
has. The page does the same with the percentages from here (`search-coverage.js`).
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from builder.find.concept_kinds import COMPLAINT, EVERYDAY, KIND_WEIGHTS, SUBJECT, concept_kind
from builder.find.phrasebook import Concept, Tokens
from builder.find.symptom_index import SymptomIndex
from builder.find.word_forms import opposite

OPPOSITE_CREDIT = 50  # of 100: a phrase has `crank` where `no crank` was asked for
CLEAR_CREDIT = 50  # an entry has a concept if it covers more of it than this
PART_CREDIT = 40  # so much of a subject or a complaint is enough for it to be the same

Credits = dict[int, int]  # phrase or entry to credit, 1 to 100


@dataclass(frozen=True, slots=True)
class BestPhrase:
    """The phrase of an entry that fits a query best, in percent."""

    phrase: int
    fit: int  # of how much of the query and how much of the phrase is covered
    covered: int  # how much of the phrase


@dataclass(frozen=True, slots=True)
class QueryCoverage:
    """What the entries cover of a query; only entries that cover something are in the maps."""

    words: int  # how many the query has, each by what it counts
    telling: int  # how many concepts the query has, everyday words apart
    is_one_word: bool  # all of it
    gain: Mapping[int, int]  # entry to the sum of rarity times credit, raised where it repeats
    credit: Mapping[int, int]  # entry to the sum of words times credit
    phrases: Mapping[int, BestPhrase]  # entry to its phrase that fits best
    named: Mapping[str, int]  # subjects and complaints in the query
    has: Mapping[str, Mapping[int, int]]  # of these, how many an entry has
    in_title: Mapping[int, int]  # of the telling ones, how many its title has

    def share(self, entry: int) -> int:
        """The share of the query that an entry covers, in percent."""
        return self.credit.get(entry, 0) // self.words if self.words else 0

    def fit(self, entry: int) -> int:
        """How well the best phrase of an entry fits, 0 to 100."""
        return self.phrases[entry].fit if entry in self.phrases else 0


def measure_coverage(concepts: Sequence[Concept], index: SymptomIndex) -> QueryCoverage:
    """Add up over the concepts of a query."""
    gain: Credits = {}
    in_title: Credits = {}
    credit: Credits = {}
    phrase_gain: Credits = {}
    phrase_credit: Credits = {}
    named = {SUBJECT: 0, COMPLAINT: 0}
    has: dict[str, Credits] = {SUBJECT: {}, COMPLAINT: {}}
    words = most = telling = 0
    for concept in concepts:
        in_phrases = _covered_phrases(concept, index)
        best, raised = _by_entry(in_phrases, index)
        kind = kind_of(concept, index)
        rare = _rarity_of(best, index) * KIND_WEIGHTS[kind] // 100
        most += rare * 100
        words += concept.words * KIND_WEIGHTS[kind]
        _add(gain, raised, rare)
        _add(credit, best, concept.words * KIND_WEIGHTS[kind])
        _add(phrase_gain, in_phrases, rare)
        _add(phrase_credit, in_phrases, 1)
        if kind in named:
            named[kind] += 1
            _add(has[kind], _entries_above(best, PART_CREDIT), 1)
        if kind != EVERYDAY:
            telling += 1
            _add(in_title, _entries_above(_by_title(in_phrases, index), CLEAR_CREDIT), 1)
    phrases = _best_phrases(index, phrase_gain, phrase_credit, most)
    one = len(concepts) == 1 == concepts[0].words
    return QueryCoverage(words, telling, one, gain, credit, phrases, named, has, in_title)


def _entries_above(credits: Credits, least: int) -> Credits:
    return {entry: 1 for entry, credit in credits.items() if credit > least}


def _by_title(in_phrases: Credits, index: SymptomIndex) -> Credits:
    """Each entry whose title is covered, with the credit of that."""
    return {
        index.phrases[at].entry: credit
        for at, credit in in_phrases.items()
        if index.phrases[at].is_title
    }


def kind_of(concept: Concept, index: SymptomIndex) -> str:
    """What kind of thing a concept says."""
    known = any(token in index.postings for token in concept.tokens)
    return concept_kind(concept, index.trade, index.vocabulary.little, known=known)


def _rarity_of(best: Credits, index: SymptomIndex) -> int:
    return rarity(len(index.entries), sum(covered > CLEAR_CREDIT for covered in best.values()))


def _best_phrases(
    index: SymptomIndex, gain: Credits, credit: Credits, most: int
) -> dict[int, BestPhrase]:
    """The phrase of each entry that fits best; the first of equals."""
    best: dict[int, BestPhrase] = {}
    for at in sorted(gain):
        phrase = index.phrases[at]
        covered = min(credit[at] // len(phrase.concepts), 100)
        fit = _harmonic_mean(gain[at] * 100 // most, covered)
        if phrase.entry not in best or fit > best[phrase.entry].fit:
            best[phrase.entry] = BestPhrase(at, fit, covered)
    return best


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
