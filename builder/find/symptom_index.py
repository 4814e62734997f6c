"""The symptom index: which words and codes stand in which phrases of which trees.

In: the rows of a shop. Out: `SymptomIndex`, asked by `ranking`, and packed for the page by
`page_data`: the page makes none of its own.
"""

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from builder.find.common_words import MEASURES, NEGATIONS, STOP_WORDS
from builder.find.concept_kinds import TradeTokens, trade_tokens
from builder.find.phrasebook import (
    Phrasebook,
    Tokens,
    find_concepts,
    make_phrasebook,
    shop_tokens,
)
from builder.find.safety import danger_words
from builder.find.search_table import SearchTable, VehicleRow
from builder.find.word_forms import split_words, stem_word

# Percent that a word counts, by the phrase it stands in.
OWN = 100  # the title, and the symptom in the words of customers
SYSTEM = 60

UNSAID = -1  # instead of how often a word stands: neither trees nor the shop's words have it


def lamp_weight(lamps: int) -> int:
    """The name of a lamp that is on: the more lamps a tree has, the less each of them tells."""
    return max(40, 90 - 10 * lamps)


@dataclass(frozen=True, slots=True)
class IndexedEntry:
    """Something that can be found."""

    id: str
    title: str
    kind: str  # tree | article
    vehicles: tuple[VehicleRow, ...] = ()  # () = any
    draft: bool = False


@dataclass(frozen=True, slots=True)
class IndexedPhrase:
    """A phrase of an entry: its title, a symptom, a lamp, its system."""

    entry: int
    text: str
    concepts: tuple[Tokens, ...]  # the tokens of each, and of all that it can mean
    weight: int  # percent: what the tree says of itself counts more than the name of a lamp
    is_title: bool  # of a tree; an article has nothing else


@dataclass(frozen=True, slots=True)
class ListedCode:
    """A code in the list of an entry."""

    entry: int
    failure_type: str  # "" if the tree gives none
    place: int  # 0 for the first of the list


@dataclass(frozen=True, slots=True)
class Vocabulary:
    """Words that are understood; all others are taken for misspelled."""

    spoken: frozenset[str]  # words that stand in phrases
    known: Mapping[str, int]  # every word, and how often it stands, or UNSAID
    stems: Mapping[str, str]  # each stem with its most used word
    stem_uses: Mapping[str, int]  # how often that word stands
    everyday: frozenset[str]  # words that say little
    plain: Mapping[str, int]  # plain English, in which a slip is no word of the trade
    little: frozenset[str]  # their stems


@dataclass(frozen=True, slots=True)
class SymptomIndex:
    """Entries, their phrases, and where each token and each code stands."""

    entries: tuple[IndexedEntry, ...]
    phrases: tuple[IndexedPhrase, ...]
    postings: Mapping[str, tuple[int, ...]]  # token to phrases
    codes: Mapping[str, tuple[ListedCode, ...]]  # `U0121` to the entries that list it
    code_meanings: Mapping[str, str]  # `U0121` to the shop's own words for it
    vehicles: tuple[VehicleRow, ...]
    vocabulary: Vocabulary
    book: Phrasebook
    trade: TradeTokens


def build_symptom_index(table: SearchTable) -> SymptomIndex:
    """Index the trees of a shop, and the titles of its articles."""
    book = make_phrasebook(table.slang, table.synonyms, (*table.trade.subjects, *table.trade.lone))
    texts = tuple(_weighted_texts(table))
    trees = len(table.trees)
    before = (None, *(entry for entry, _, _ in texts))
    phrases = tuple(
        IndexedPhrase(
            entry, text, _concept_tokens(text, book), weight, is_title=last != entry < trees
        )
        for last, (entry, text, weight) in zip(before, texts, strict=False)
    )
    return SymptomIndex(
        entries=tuple(_indexed_entries(table)),
        phrases=phrases,
        postings=_postings(phrases),
        codes=_listed_codes(table),
        code_meanings=dict(table.codes),
        vehicles=table.vehicles,
        vocabulary=_vocabulary(table, phrases),
        book=book,
        trade=trade_tokens(table.trade, book.synonyms),
    )


def _indexed_entries(table: SearchTable) -> Iterator[IndexedEntry]:
    for tree in table.trees:
        vehicles = tuple(table.vehicles[at] for at in tree.vehicles)
        yield IndexedEntry(tree.id, _one_line(tree.title), "tree", vehicles, tree.draft)
    for article in table.articles:
        yield IndexedEntry(article.id, _one_line(article.name), "article")


def _weighted_texts(table: SearchTable) -> Iterator[tuple[int, str, int]]:
    """Every phrase with the number of its entry and its weight; the title of an entry first."""
    for at, tree in enumerate(table.trees):
        for text in (tree.title, *tree.words):
            yield at, _one_line(text), OWN
        for lamp in tree.lamps:
            weight = lamp_weight(len(tree.lamps))
            yield at, _one_line(table.lamps[lamp].name), weight
            # People describe how it looks in other words.
            yield at, _one_line(table.lamps[lamp].looks), weight - 20
        if tree.system >= 0:
            yield at, _one_line(table.systems[tree.system].name), SYSTEM
    for at, article in enumerate(table.articles, start=len(table.trees)):
        yield at, _one_line(article.name), OWN


def _one_line(text: str) -> str:
    return " ".join(text.split())


def _concept_tokens(text: str, book: Phrasebook) -> tuple[Tokens, ...]:
    concepts = find_concepts(shop_tokens(split_words(text), book.synonyms), book)
    return tuple(dict.fromkeys(concept.tokens for concept in concepts))


def _postings(phrases: Iterable[IndexedPhrase]) -> dict[str, tuple[int, ...]]:
    """Each token with its phrases; so is what stands there as one thing (`spare tire`)."""
    postings: dict[str, list[int]] = defaultdict(list)
    for at, phrase in enumerate(phrases):
        each = (token for concept in phrase.concepts for token in (*concept, " ".join(concept)))
        for token in dict.fromkeys(each):
            postings[token].append(at)
    return {token: tuple(where) for token, where in postings.items()}


def _listed_codes(table: SearchTable) -> dict[str, tuple[ListedCode, ...]]:
    codes: dict[str, list[ListedCode]] = defaultdict(list)
    for at, tree in enumerate(table.trees):
        for place, code in enumerate(tree.codes):
            name, _, failure_type = code.partition("-")
            codes[name].append(ListedCode(at, failure_type, place))
    return {code: tuple(where) for code, where in codes.items()}


def _vocabulary(table: SearchTable, phrases: Iterable[IndexedPhrase]) -> Vocabulary:
    spoken = Counter(word for phrase in phrases for word in split_words(phrase.text))
    known = {
        **dict.fromkeys(_unsaid_words(table), UNSAID),
        **dict.fromkeys(_words_in_no_phrase(table), 0),
        **spoken,
    }
    stems: dict[str, str] = {}
    for word in sorted(known, key=lambda word: (-known[word], word)):
        stems.setdefault(stem_word(word), word)
    return Vocabulary(
        spoken=frozenset(spoken),
        known=known,
        stems=stems,
        stem_uses={stem: known[word] for stem, word in stems.items()},
        everyday=table.everyday,
        plain=dict.fromkeys(STOP_WORDS | table.everyday, 0),
        little=frozenset(map(stem_word, table.everyday)),
    )


def _words_in_no_phrase(table: SearchTable) -> set[str]:
    """Words that a query may use though no tree does."""
    rows = (*table.synonyms, *table.slang)
    texts = (
        *(text for row in rows for text in (row.phrase, *row.terms)),
        *(name for vehicle in table.vehicles for name in (vehicle.make, vehicle.model)),
    )
    return {
        *STOP_WORDS,
        *NEGATIONS,
        *MEASURES,
        *(word for text in texts for word in split_words(text)),
    }


def _unsaid_words(table: SearchTable) -> set[str]:
    """Words of the trade that the shop has none of: no misspelled ones."""
    of_trade = {word for texts in table.trade for text in texts for word in split_words(text)}
    return {*danger_words(), *of_trade} - table.everyday
