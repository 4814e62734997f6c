"""Where to look when nothing fits: the nearest systems and lamps.

In: the rows, or what of them has trees, and the query. Out: `Suggestion`s, nearest first. The page
ranks the same places in the same way (`search-rank.js`).
"""

from collections.abc import Iterable
from dataclasses import dataclass

from builder.find.search_table import SearchTable
from builder.find.word_forms import split_words

MOST_SUGGESTIONS = 6  # of each kind


@dataclass(frozen=True, slots=True)
class Suggestion:
    """A system or a lamp that has trees."""

    kind: str  # system | lamp
    id: str
    name: str


def places_with_trees(table: SearchTable) -> tuple[Suggestion, ...]:
    """Systems and lamps that lead to a tree."""
    systems = sorted({tree.system for tree in table.trees if tree.system >= 0})
    lamps = sorted({lamp for tree in table.trees for lamp in tree.lamps})
    return (
        *(Suggestion("system", *table.systems[at]) for at in systems),
        *(Suggestion("lamp", *table.lamps[at][:2]) for at in lamps),
    )


def suggest_places(places: Iterable[Suggestion], query: str) -> tuple[Suggestion, ...]:
    """Systems, then lamps, those whose names look most like the query first."""
    nearest = sorted(places, key=lambda place: (-likeness(query, place.name), place.name))
    systems = [place for place in nearest if place.kind == "system"]
    lamps = [place for place in nearest if place.kind == "lamp"]
    return (*systems[:MOST_SUGGESTIONS], *lamps[:MOST_SUGGESTIONS])


def likeness(one: str, other: str) -> int:
    """How alike two texts are: shared pairs of letters in percent of all (after Dice)."""
    ours, theirs = _letter_pairs(one), _letter_pairs(other)
    return 200 * len(ours & theirs) // max(1, len(ours) + len(theirs))


def _letter_pairs(text: str) -> set[str]:
    return {word[at : at + 2] for word in split_words(text) for at in range(len(word) - 1)}
