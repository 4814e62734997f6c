"""Where to look when nothing fits: the nearest systems and lamps.

In: the rows and the query. Out: `Offer`s, nearest first. Mirrored by `web/search-rank.js`.
"""

from dataclasses import dataclass

from builder.find.rows import Table
from builder.find.words import surfaces

MOST = 6  # of each kind


@dataclass(frozen=True, slots=True)
class Offer:
    """A system or a lamp that has trees."""

    kind: str  # system | lamp
    id: str
    name: str


def offers(table: Table, query: str) -> tuple[Offer, ...]:
    """Systems and lamps with trees, those whose names look most like the query first."""
    systems = {tree.system for tree in table.trees}
    lamps = {lamp for tree in table.trees for lamp in tree.lamps}
    found = [Offer("system", row.id, row.name) for at, row in enumerate(table.systems)
             if at in systems]  # fmt: skip
    lit = [Offer("lamp", row.id, row.name) for at, row in enumerate(table.lamps) if at in lamps]
    return (*_nearest(found, query), *_nearest(lit, query))


def _nearest(found: list[Offer], query: str) -> list[Offer]:
    return sorted(found, key=lambda offer: (-likeness(query, offer.name), offer.name))[:MOST]


def likeness(one: str, other: str) -> int:
    """How alike two texts are: shared pairs of letters in percent of all (after Dice)."""
    ours, theirs = _pairs(one), _pairs(other)
    return 200 * len(ours & theirs) // max(1, len(ours) + len(theirs))


def _pairs(text: str) -> set[str]:
    return {word[at : at + 2] for word in surfaces(text) for at in range(len(word) - 1)}
