"""How much of a query each entry covers.

In: the concepts of a query and the index. Out: `QueryCoverage`, in whole numbers: what each entry
gains, its share of the query, how well its best phrase fits, and what of the query it mentions. The
page does the same with the percentages from here (`search-coverage.js`).
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from builder.find.covered_concepts import Credits, add_credits, cover_concept
from builder.find.mentions import Mentions, count_mentions
from builder.find.phrasebook import Concept
from builder.find.symptom_index import SymptomIndex


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
    gain: Mapping[int, int]  # entry to the sum of rarity times credit, raised where it repeats
    credit: Mapping[int, int]  # entry to the sum of words times credit
    phrases: Mapping[int, BestPhrase]  # entry to its phrase that fits best
    mentions: Mentions

    def share(self, entry: int) -> int:
        """The share of the query that an entry covers, in percent."""
        return self.credit.get(entry, 0) // self.words if self.words else 0

    def fit(self, entry: int) -> int:
        """How well the best phrase of an entry that covers something fits, 0 to 100."""
        return self.phrases[entry].fit


def measure_coverage(
    concepts: Sequence[Concept], index: SymptomIndex, unlisted: int = 0
) -> QueryCoverage:
    """Add up over the concepts of a query, beside so many codes that no entry lists."""
    covered = [cover_concept(concept, index) for concept in concepts]
    gain: Credits = {}
    credit: Credits = {}
    phrase_gain: Credits = {}
    phrase_credit: Credits = {}
    for one in covered:
        add_credits(gain, one.raised, one.rare)
        add_credits(credit, one.best, one.words * one.weight)
        add_credits(phrase_gain, one.in_phrases, one.rare)
        add_credits(phrase_credit, one.in_phrases, 1)
    most = sum(one.rare for one in covered) * 100
    phrases = _best_phrases(index, phrase_gain, phrase_credit, most)
    words = sum(one.words * one.weight for one in covered)
    return QueryCoverage(words, gain, credit, phrases, count_mentions(covered, unlisted))


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
