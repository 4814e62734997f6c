"""Everything that is known besides the tree at hand.

In: knowledge files, the shop, and a summary of each tree. Out: one `Library` for rules, pages,
plans and the search.
"""

from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import partial

from builder.model.conditions import Condition
from builder.model.knowledge import (
    Case,
    CodeEntry,
    FailureType,
    Hazard,
    HowTo,
    Lamp,
    System,
    Term,
    Tool,
    Word,
)
from builder.model.module_record import Module
from builder.model.procedures import Procedure
from builder.model.shop import Shop
from builder.model.silence import Silence
from builder.model.summary import Handoff, TreeListing, TreeSummary, listing_of
from builder.model.tree import Status
from builder.model.vehicle_data import Spec, Vehicle, VehiclePart


class NotThereError(Exception):
    """The shop doesn't have what was named."""


class Trees(Mapping[str, TreeSummary]):
    """Summaries by ID, each loaded when it is first needed, and the listings of all."""

    def __init__(
        self, listings: Mapping[str, TreeListing], summary: Callable[[TreeListing], TreeSummary]
    ) -> None:
        """Take the listings of all trees, and a function that loads a summary."""
        self.listings = listings
        self._summary = summary
        self._loaded: dict[str, TreeSummary] = {}

    def __getitem__(self, id_: str) -> TreeSummary:
        """Return the summary of a tree. Raises KeyError where there is none."""
        if id_ not in self._loaded:
            self._loaded[id_] = self._summary(self.listings[id_])
        return self._loaded[id_]

    def __contains__(self, id_: object) -> bool:
        """Return whether there is such a tree, without loading its summary."""
        return id_ in self.listings

    def __iter__(self) -> Iterator[str]:
        """Iterate over the IDs."""
        return iter(self.listings)

    def __len__(self) -> int:
        """Count the trees."""
        return len(self.listings)


@dataclass(frozen=True, slots=True)
class Library:
    """The shop, its knowledge and summaries of its trees; every mapping is keyed by ID."""

    shop: Shop
    systems: Mapping[str, System] = field(default_factory=dict)
    lamps: Mapping[str, Lamp] = field(default_factory=dict)
    hazards: Mapping[str, Hazard] = field(default_factory=dict)
    conditions: Mapping[str, Condition] = field(default_factory=dict)
    procedures: Mapping[str, Procedure] = field(default_factory=dict)
    specs: Mapping[str, Spec] = field(default_factory=dict)
    parts: Mapping[str, VehiclePart] = field(default_factory=dict)
    tools: Mapping[str, Tool] = field(default_factory=dict)
    vehicles: Mapping[str, Vehicle] = field(default_factory=dict)
    codes: Mapping[str, CodeEntry] = field(default_factory=dict)
    failure_types: Mapping[str, FailureType] = field(default_factory=dict)
    glossary: Mapping[str, Term] = field(default_factory=dict)
    words: Mapping[str, Word] = field(default_factory=dict)
    house_words: Mapping[str, Word] = field(default_factory=dict)  # what the shop doesn't write
    same_words: Mapping[str, Word] = field(default_factory=dict)  # for the search alone
    how_tos: Mapping[str, HowTo] = field(default_factory=dict)
    modules: Mapping[str, Module] = field(default_factory=dict)
    cases: Mapping[str, Case] = field(default_factory=dict)
    pictures: Mapping[str, int] = field(default_factory=dict)  # bytes by name
    trees: Mapping[str, TreeSummary] = field(default_factory=dict)
    silences: tuple[Silence, ...] = ()  # in the files of `kb/`
    complete: bool = True  # whether every tree was read without mistakes
    unread_trees: frozenset[str] = frozenset()  # IDs of files of which no tree could be made
    entry_numbers: Mapping[str, int] = field(default_factory=dict)  # of `tree#step`, where known
    listings: Mapping[str, TreeListing] = field(init=False)
    # For each tree the ones that hand off to it, with the step they enter; "" is the start.
    callers: Mapping[str, tuple[tuple[str, str], ...]] = field(init=False)

    def __post_init__(self) -> None:
        """Sort the handoffs by the tree they lead to, once for all callers."""
        trees = self.trees if isinstance(self.trees, Trees) else trees_of(self.trees.values())
        object.__setattr__(self, "listings", trees.listings)
        object.__setattr__(self, "callers", _callers(trees.listings.values()))


def trees_of(summaries: Iterable[TreeSummary]) -> Trees:
    """Return trees whose summaries are all loaded."""
    by_id = {summary.id: summary for summary in summaries}
    listings = {id_: listing_of(summary) for id_, summary in by_id.items()}
    return Trees(listings, partial(_by_id, by_id))


def _by_id(summaries: Mapping[str, TreeSummary], listing: TreeListing) -> TreeSummary:
    return summaries[listing.id]


def self_contained(library: Library) -> Library:
    """Return the library with every summary loaded, to send it to another process."""
    return replace(library, trees=trees_of(library.trees.values()))


def _callers(listings: Iterable[TreeListing]) -> dict[str, tuple[tuple[str, str], ...]]:
    callers: dict[str, list[tuple[str, str]]] = defaultdict(list)
    for listing in listings:
        if listing.status is not Status.RETIRED:
            for tree, step in listing.leads_to:
                callers[tree].append((listing.id, step))
    return {tree: tuple(calls) for tree, calls in callers.items()}


def handoffs_to(library: Library, id_: str) -> Iterator[Handoff]:
    """Yield the handoffs to a tree, whether it exists or not."""
    for caller in dict.fromkeys(caller for caller, _ in library.callers.get(id_, ())):
        yield from (handoff for handoff in library.trees[caller].handoffs if handoff.tree == id_)


def entered_at(library: Library, id_: str) -> tuple[str, ...]:
    """Return the steps where a walk can enter a tree: its start, and the targets of handoffs."""
    named = (step for _, step in library.callers.get(id_, ()) if step)
    return tuple(dict.fromkeys((library.listings[id_].steps[0], *named)))
