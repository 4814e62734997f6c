"""What kind of thing a concept of a query says.

In: a concept and the index. Out: its kind. What a complaint is about and what it does tell most;
plain English tells little. An unknown word may be a name or a neighbor, or a part that no
tree has. The page does the same with the lists from here (`search-coverage.js`).
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from builder.find.phrasebook import Concept, Tokens, shop_tokens
from builder.find.trade_words import TradeWords
from builder.find.word_forms import split_words, without_no

SUBJECT = "subject"  # a part or a system: `brake`, `radiator`
LONE = "lone"  # a part that is the subject wherever it is named: `sunroof`, `dome light`
COMPLAINT = "complaint"  # what it does: `squeak`, `leak`
ERRAND = "errand"  # what is asked for without a complaint: `price`, `size`
EVERYDAY = "everyday"
UNKNOWN = "unknown"  # in no phrase of the index
PLAIN = "plain"

# Percent that a concept counts.
KIND_WEIGHTS = {
    SUBJECT: 100,
    LONE: 100,
    COMPLAINT: 100,
    ERRAND: 30,
    EVERYDAY: 30,
    UNKNOWN: 20,
    PLAIN: 100,
}


@dataclass(frozen=True, slots=True)
class TradeTokens:
    """The words of the trade as tokens, each phrase joined by blanks."""

    subjects: frozenset[str]
    lone: frozenset[str]
    complaints: frozenset[str]
    errands: frozenset[str]


def trade_tokens(words: TradeWords, synonyms: Mapping[str, Tokens]) -> TradeTokens:
    """Take the words of the trade as the shop says them."""

    def as_tokens(phrases: Iterable[str]) -> frozenset[str]:
        return frozenset(" ".join(shop_tokens(split_words(text), synonyms)) for text in phrases)

    return TradeTokens(*map(as_tokens, words))


def concept_kind(
    concept: Concept, trade: TradeTokens, little: frozenset[str], *, known: bool
) -> str:
    """Return the kind; `known` is whether any phrase of the index has the concept."""
    wordings = {" ".join(map(without_no, words)) for words in concept.alternatives}
    if wordings & trade.subjects:
        return SUBJECT
    if wordings & trade.lone:
        return LONE
    if wordings & trade.complaints:
        return COMPLAINT
    if wordings & trade.errands:
        return ERRAND
    if len(wordings) == 1 and (wordings <= little or all(map(str.isdigit, wordings))):
        return EVERYDAY
    return PLAIN if known else UNKNOWN
