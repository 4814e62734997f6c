"""Where each concept of a query stands.

In: a concept and the index. Out: `CoveredConcept`: the phrases and entries that cover it, each with
a credit of 1 to 100, what kind of thing it says, and how much it tells apart. The page does the
same (`search-coverage.js`).
"""

import math
from dataclasses import dataclass

from builder.find.concept_kinds import KIND_WEIGHTS, concept_kind
from builder.find.phrasebook import Concept, Tokens
from builder.find.symptom_index import SymptomIndex
from builder.find.word_forms import opposite, without_no

OPPOSITE_CREDIT = 50  # of 100: a phrase has `crank` where `no crank` was asked for
CLEAR_CREDIT = 50  # an entry has a concept if it covers more of it than this

Credits = dict[int, int]  # phrase or entry to credit


@dataclass(frozen=True, slots=True)
class CoveredConcept:
    """A concept of a query and what covers it."""

    words: int  # how many say it
    kind: str
    rare: int  # how much it tells apart, by what its kind counts
    in_phrases: Credits
    best: Credits  # the best credit in each entry
    raised: Credits  # the same, raised where an entry repeats it
    in_titles: Credits  # the credit of each title

    @property
    def weight(self) -> int:
        """Percent that the concept counts."""
        return KIND_WEIGHTS[self.kind]


def cover_concept(concept: Concept, index: SymptomIndex) -> CoveredConcept:
    """Look a concept up."""
    in_phrases = _covered_phrases(concept, index)
    best, raised = _by_entry(in_phrases, index)
    kind = kind_of(concept, index)
    having = sum(covered > CLEAR_CREDIT for covered in best.values())
    rare = rarity(len(index.entries), having) * KIND_WEIGHTS[kind] // 100
    in_titles = {
        index.phrases[at].entry: credit
        for at, credit in in_phrases.items()
        if index.phrases[at].is_title
    }
    return CoveredConcept(concept.words, kind, rare, in_phrases, best, raised, in_titles)


def kind_of(concept: Concept, index: SymptomIndex) -> str:
    """What kind of thing a concept says."""
    both = (each for token in concept.tokens for each in (token, opposite(token)))
    known = any(token in index.postings for token in both)
    return concept_kind(concept, index.trade, index.vocabulary.little, known=known)


def rarity(entries: int, having: int) -> int:
    """How much a concept tells apart: 100 ln(1 + entries / entries that have it), rounded."""
    return math.floor(100 * math.log(1 + entries / max(1, having)) + 0.5)


def _covered_phrases(concept: Concept, index: SymptomIndex) -> Credits:
    """Phrases that a concept covers: the best of its alternatives.

    An alternative of several words that is there only in part counts the square of that part.
    """
    credits: Credits = {}
    for words in concept.alternatives:
        tokens = _with_whole(words, index)
        for phrase, total in _phrases_with(tokens, index).items():
            part = total // len(tokens)
            credit = part * part // 100 * index.phrases[phrase].weight // 100
            credits[phrase] = max(credit, credits.get(phrase, credit))
    return credits


def _with_whole(words: Tokens, index: SymptomIndex) -> Tokens:
    """A part of several words is more than these: a `spare key` is no spare tire."""
    whole = " ".join(map(without_no, words))
    is_part = len(words) > 1 and (whole in index.trade.lone or whole in index.trade.subjects)
    return (*words, " ".join(words)) if is_part else words


def _phrases_with(words: Tokens, index: SymptomIndex) -> Credits:
    totals: Credits = {}
    for token in words:
        own = index.postings.get(token, ())
        add_credits(totals, dict.fromkeys(own, 100), 1)
        contrary = set(index.postings.get(opposite(token), ())) - set(own)
        add_credits(totals, dict.fromkeys(contrary, OPPOSITE_CREDIT), 1)
    return totals


def _by_entry(in_phrases: Credits, index: SymptomIndex) -> tuple[Credits, Credits]:
    """The best credit in each entry; and the same raised by a tenth for each of three more phrases.

    What a tree says again and again is what it is about.
    """
    best: Credits = {}
    count: Credits = {}
    for phrase, credit in in_phrases.items():
        entry = index.phrases[phrase].entry
        best[entry] = max(credit, best.get(entry, credit))
        count[entry] = count.get(entry, 0) + 1
    raised = {entry: credit * (9 + min(count[entry], 4)) // 10 for entry, credit in best.items()}
    return best, raised


def add_credits(totals: Credits, credits: Credits, times: int) -> None:
    """Add credits to totals, some times over."""
    for at, credit in credits.items():
        totals[at] = totals.get(at, 0) + credit * times
