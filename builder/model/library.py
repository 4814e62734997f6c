"""All that is known beside the one tree in hand.

In: knowledge files, the shop, and a summary of each tree. Out: one `Library` that rules, pages,
plans and the search ask.
"""

from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import partial

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
    Vehicle,
    Word,
)
from builder.model.module_record import Module
from builder.model.shop import Shop
from builder.model.silence import Silence
from builder.model.summary import Handoff, Summary, TreeListing, listing_of
from builder.model.tree import Status


class NotThereError(Exception):
    """Something was named that the shop does not have."""


class Trees(Mapping[str, Summary]):
    """Summaries by id, each made when it is first asked for, and the listings of all."""

    def __init__(
        self, listings: Mapping[str, TreeListing], summary: Callable[[TreeListing], Summary]
    ) -> None:
        """Take the listings of all, and what makes a summary."""
        self.listings = listings
        self._summary = summary
        self._made: dict[str, Summary] = {}

    def __getitem__(self, id_: str) -> Summary:
        """Return the summary of a tree. Raises KeyError where there is none."""
        if id_ not in self._made:
            self._made[id_] = self._summary(self.listings[id_])
        return self._made[id_]

    def __contains__(self, id_: object) -> bool:
        """Whether there is such a tree; its summary is not made for that."""
        return id_ in self.listings

    def __iter__(self) -> Iterator[str]:
        """Go through the ids."""
        return iter(self.listings)

    def __len__(self) -> int:
        """Count the trees."""
        return len(self.listings)


@dataclass(frozen=True, slots=True)
class Library:
    """The shop, its knowledge and its trees in summary; every map is keyed by id."""

    shop: Shop
    systems: Mapping[str, System] = field(default_factory=dict)
    lamps: Mapping[str, Lamp] = field(default_factory=dict)
    hazards: Mapping[str, Hazard] = field(default_factory=dict)
    tools: Mapping[str, Tool] = field(default_factory=dict)
    vehicles: Mapping[str, Vehicle] = field(default_factory=dict)
    codes: Mapping[str, CodeEntry] = field(default_factory=dict)
    failure_types: Mapping[str, FailureType] = field(default_factory=dict)
    glossary: Mapping[str, Term] = field(default_factory=dict)
    words: Mapping[str, Word] = field(default_factory=dict)
    same_words: Mapping[str, Word] = field(default_factory=dict)  # for the search alone
    how_tos: Mapping[str, HowTo] = field(default_factory=dict)
    modules: Mapping[str, Module] = field(default_factory=dict)
    cases: Mapping[str, Case] = field(default_factory=dict)
    pictures: Mapping[str, int] = field(default_factory=dict)  # in kb/how-to/pictures: name, bytes
    trees: Mapping[str, Summary] = field(default_factory=dict)
    silences: tuple[Silence, ...] = ()  # in the files of the knowledge
    whole: bool = True  # whether every tree could be read without a mistake of text
    entries: Mapping[str, int] = field(default_factory=dict)  # of `tree#step` its number, if known
    listings: Mapping[str, TreeListing] = field(init=False)
    # By tree, those that hand off to it, each with the step that it enters or "" for the start.
    callers: Mapping[str, tuple[tuple[str, str], ...]] = field(init=False)

    def __post_init__(self) -> None:
        """Sort the handoffs by the tree they lead to, once for all callers."""
        trees = self.trees if isinstance(self.trees, Trees) else trees_of(self.trees.values())
        object.__setattr__(self, "listings", trees.listings)
        object.__setattr__(self, "callers", _callers(trees.listings.values()))


def trees_of(summaries: Iterable[Summary]) -> Trees:
    """Return trees whose summaries are all made."""
    made = {of.id: of for of in summaries}
    return Trees({id_: listing_of(of) for id_, of in made.items()}, partial(_made, made))


def _made(made: Mapping[str, Summary], listing: TreeListing) -> Summary:
    return made[listing.id]


def self_contained(library: Library) -> Library:
    """Return the library with every summary made, so that another process can work with it."""
    return replace(library, trees=trees_of(library.trees.values()))


def _callers(listings: Iterable[TreeListing]) -> dict[str, tuple[tuple[str, str], ...]]:
    found: dict[str, list[tuple[str, str]]] = defaultdict(list)
    for listing in listings:
        if listing.status is not Status.RETIRED:
            for tree, step in listing.leads_to:
                found[tree].append((listing.id, step))
    return {tree: tuple(callers) for tree, callers in found.items()}


def handoffs_to(library: Library, id_: str) -> Iterator[Handoff]:
    """Yield the handoffs that lead to a tree, whether it is there or not."""
    for caller in dict.fromkeys(caller for caller, _ in library.callers.get(id_, ())):
        yield from (handoff for handoff in library.trees[caller].handoffs if handoff.tree == id_)


def entered_at(library: Library, id_: str) -> tuple[str, ...]:
    """Return the steps at which a tree is begun: its start, and where others lead into it."""
    named = (step for _, step in library.callers.get(id_, ()) if step)
    return tuple(dict.fromkeys((library.listings[id_].steps[0], *named)))
