"""The symptom index: which words and codes stand in which phrases of which trees.

In: the rows of a shop. Out: `Index`, asked by `rank`. The page builds the same index from the same
rows (`web/search-index.js`), so nothing of it is shipped.
"""

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from builder.find.phrasebook import Concept, Phrasebook, concepts, phrasebook, shop_words
from builder.find.rows import Table, VehicleRow
from builder.find.rows import table as rows_of
from builder.find.words import NEGATORS, STOP, stem, surfaces
from builder.model.library import Library

# Percent that a word counts, by the phrase it stands in.
OWN = 100  # the title, and the symptom in the words of customers
SYSTEM = 60


def lamp_weight(lamps: int) -> int:
    """The name of a lamp that is on: the more lamps a tree has, the less each of them tells."""
    return max(40, 90 - 10 * lamps)


@dataclass(frozen=True, slots=True)
class Entry:
    """Something that can be found."""

    id: str
    title: str
    kind: str  # tree | how-to
    vehicles: tuple[VehicleRow, ...] = ()  # () = any
    draft: bool = False


@dataclass(frozen=True, slots=True)
class Phrase:
    """A phrase of an entry: its title, a symptom, a lamp, its system."""

    entry: int
    text: str
    length: int  # concepts in it
    weight: int  # percent: what the tree says of itself counts more than the name of a lamp


@dataclass(frozen=True, slots=True)
class Listed:
    """A code in the list of an entry."""

    entry: int
    failure_type: str  # "" if the tree does not say
    place: int  # 0 for the first of the list


@dataclass(frozen=True, slots=True)
class Index:
    """Entries, their phrases, and where each token and each code stands."""

    table: Table
    entries: tuple[Entry, ...]
    phrases: tuple[Phrase, ...]
    postings: Mapping[str, tuple[int, ...]]  # token to phrases
    codes: Mapping[str, tuple[Listed, ...]]  # `U0121` to the entries that list it
    code_says: Mapping[str, str]  # `U0121` to the shop's own words for it
    digits: Mapping[str, tuple[str, ...]]  # `0121` to `P0121`, `U0121`
    spoken: frozenset[str]  # surfaces that stand in phrases
    known: Mapping[str, int]  # every surface that is understood, and how often it stands
    stems: Mapping[str, str]  # of what is known, with the most used surface of each
    stem_uses: Mapping[str, int]  # how often that surface stands
    book: Phrasebook
    everyday: frozenset[str]  # words that say little
    little: frozenset[str]  # their tokens


def index(library: Library) -> Index:
    """Index a library: its trees, and the titles of its articles."""
    return index_of(rows_of(library))


def index_of(table: Table) -> Index:
    """Index rows."""
    book = phrasebook(table.slang, table.same)
    entries = tuple(_entries(table))
    phrases: list[Phrase] = []
    postings: dict[str, list[int]] = defaultdict(list)
    spoken: Counter[str] = Counter()
    for entry, text, weight in _texts(table):
        words = surfaces(text)
        parts = concepts(shop_words(words, book.same), book)
        for token in _tokens(parts):
            postings[token].append(len(phrases))
        phrases.append(Phrase(entry, text, len(parts), weight))
        spoken.update(words)
    codes = _codes(table)
    known = _known(table, spoken)
    everyday = frozenset(table.everyday.split())
    stems = _stems(known)
    return Index(
        table=table,
        entries=entries,
        phrases=tuple(phrases),
        postings={token: tuple(where) for token, where in postings.items()},
        codes=codes,
        code_says=dict(table.codes),
        digits=_digits({*codes, *(row.code for row in table.codes)}),
        spoken=frozenset(spoken),
        known=known,
        stems=stems,
        stem_uses={short: known[word] for short, word in stems.items()},
        book=book,
        everyday=everyday,
        little=frozenset(stem(word) for word in everyday),
    )


def _entries(table: Table) -> Iterator[Entry]:
    for tree in table.trees:
        vehicles = tuple(table.vehicles[at] for at in tree.vehicles)
        yield Entry(tree.id, tree.title, "tree", vehicles, bool(tree.draft))
    for how_to in table.how_tos:
        yield Entry(how_to.id, how_to.name, "how-to")


def _texts(table: Table) -> Iterator[tuple[int, str, int]]:
    """Every phrase with the number of its entry and its weight."""
    for at, tree in enumerate(table.trees):
        for text in (tree.title, *tree.words):
            yield at, text, OWN
        for lamp in tree.lamps:
            weight = lamp_weight(len(tree.lamps))
            yield at, table.lamps[lamp].name, weight
            yield at, table.lamps[lamp].looks, weight - 20  # people describe it in other words
        if tree.system >= 0:
            yield at, table.systems[tree.system].name, SYSTEM
    for at, how_to in enumerate(table.how_tos, start=len(table.trees)):
        yield at, how_to.name, OWN


def _tokens(parts: list[Concept]) -> Iterable[str]:
    """The tokens of a phrase and of all that it can mean, each once."""
    return dict.fromkeys(token for part in parts for words in part.alternatives for token in words)


def _codes(table: Table) -> dict[str, tuple[Listed, ...]]:
    codes: dict[str, list[Listed]] = defaultdict(list)
    for at, tree in enumerate(table.trees):
        for place, code in enumerate(tree.codes):
            short, _, failure_type = code.partition("-")
            codes[short].append(Listed(at, failure_type, place))
    return {code: tuple(where) for code, where in codes.items()}


def _digits(codes: Iterable[str]) -> dict[str, tuple[str, ...]]:
    digits: dict[str, list[str]] = defaultdict(list)
    for code in sorted(codes):
        digits[code[1:]].append(code)
    return {four: tuple(found) for four, found in digits.items()}


def _known(table: Table, spoken: Counter[str]) -> dict[str, int]:
    """Every surface that a query may use, so that only the others are taken for misspelt."""
    others = Counter(
        word
        for text in (
            *(text for row in (*table.same, *table.slang) for text in (row.phrase, *row.terms)),
            *(name for vehicle in table.vehicles for name in (vehicle.make, vehicle.model)),
        )
        for word in surfaces(text)
    )
    return {**dict.fromkeys(STOP | NEGATORS, 0), **dict.fromkeys(others, 0), **spoken}


def _stems(known: Mapping[str, int]) -> dict[str, str]:
    stems: dict[str, str] = {}
    for word in sorted(known):
        other = stems.get(stem(word))
        if other is None or known[word] > known[other]:
            stems[stem(word)] = word
    return stems
