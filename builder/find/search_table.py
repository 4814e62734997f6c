"""What the search knows of a shop, as rows.

In: the `Library`. Out: `SearchTable`: trees with their symptom words, lamps, codes, system and
vehicles, titles of articles, the shop's words for symptoms and for codes. No body text. Retired
trees are left out.
"""

from collections.abc import Iterable
from typing import NamedTuple

from builder.find.common_words import EVERYDAY_WORDS
from builder.find.trade_words import TRADE_WORDS, TradeWords
from builder.model.knowledge import Lamp, Word
from builder.model.library import Library
from builder.model.summary import TreeSummary
from builder.model.tree import Scope


class NamedRow(NamedTuple):
    """A system, or an article: its id and its name."""

    id: str
    name: str


class LampRow(NamedTuple):
    """A lamp and how it looks."""

    id: str
    name: str
    looks: str


class VehicleRow(NamedTuple):
    """A vehicle; the years are the first and the last, 0 if not given."""

    make: str
    model: str
    first: int
    last: int


class WordRow(NamedTuple):
    """A phrase of the shop's words and what it means."""

    phrase: str
    terms: tuple[str, ...]


class CodeRow(NamedTuple):
    """A trouble code in the shop's own words."""

    code: str
    short: str


class TreeRow(NamedTuple):
    """A tree as the search sees it; numbers point into the other lists."""

    id: str
    title: str
    system: int  # -1 if the shop has no such system
    lamps: tuple[int, ...]
    codes: tuple[str, ...]
    words: tuple[str, ...]
    vehicles: tuple[int, ...]  # () = any
    draft: bool


class SearchTable(NamedTuple):
    """Everything the search needs, in an order that depends on ids alone."""

    systems: tuple[NamedRow, ...]
    lamps: tuple[LampRow, ...]
    vehicles: tuple[VehicleRow, ...]
    synonyms: tuple[WordRow, ...]
    slang: tuple[WordRow, ...]
    codes: tuple[CodeRow, ...]
    trees: tuple[TreeRow, ...]
    articles: tuple[NamedRow, ...]
    everyday: frozenset[str] = EVERYDAY_WORDS
    trade: TradeWords = TRADE_WORDS


def search_table(library: Library) -> SearchTable:
    """Take from the library what is searched."""
    trees = [tree for _, tree in sorted(library.trees.items()) if tree.status != "retired"]
    known = [vehicle.scope for vehicle in library.vehicles.values()]
    vehicles = _vehicle_rows([*known, *(scope for tree in trees for scope in tree.applies_to)])
    return SearchTable(
        systems=tuple(NamedRow(key, str(it.name)) for key, it in sorted(library.systems.items())),
        lamps=tuple(_lamp_row(key, lamp) for key, lamp in sorted(library.lamps.items())),
        vehicles=vehicles,
        synonyms=_word_rows(library.same_words.values()),
        slang=_word_rows(library.words.values()),
        codes=tuple(CodeRow(key, str(it.short)) for key, it in sorted(library.codes.items())),
        trees=tuple(_tree_row(tree, library, vehicles) for tree in trees),
        articles=tuple(NamedRow(key, str(it.title)) for key, it in sorted(library.how_tos.items())),
    )


def _lamp_row(key: str, lamp: Lamp) -> LampRow:
    looks = " ".join(filter(None, (lamp.looks_like, lamp.color)))
    return LampRow(key, str(lamp.name), looks)


def _word_rows(words: Iterable[Word]) -> tuple[WordRow, ...]:
    return tuple(
        WordRow(str(word.slang), tuple(str(term) for term in word.terms))
        for word in sorted(words, key=lambda word: word.slang)
    )


def _vehicle_rows(scopes: Iterable[Scope]) -> tuple[VehicleRow, ...]:
    return tuple(sorted({_vehicle_row(scope) for scope in scopes}))


def _vehicle_row(scope: Scope) -> VehicleRow:
    first, last = scope.years or (0, 0)
    return VehicleRow(str(scope.make), str(scope.model), first, last)


def _tree_row(tree: TreeSummary, library: Library, vehicles: tuple[VehicleRow, ...]) -> TreeRow:
    systems, lamps = sorted(library.systems), sorted(library.lamps)
    return TreeRow(
        id=tree.id,
        title=str(tree.title),
        system=systems.index(str(tree.system)) if tree.system in systems else -1,
        lamps=tuple(lamps.index(str(lamp)) for lamp in tree.symptom.lamps if lamp in lamps),
        codes=tuple(str(code) for code in tree.symptom.codes),
        words=tuple(str(words) for words in tree.symptom.words),
        vehicles=tuple(vehicles.index(_vehicle_row(scope)) for scope in tree.applies_to),
        draft=tree.status == "draft",
    )
