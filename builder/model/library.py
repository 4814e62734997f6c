"""All that is known beside the one tree in hand.

In: knowledge files, the shop, and a summary of each tree. Out: one `Library` that rules, pages,
plans and the search ask.
"""

from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from builder.model.knowledge import (
    Case,
    CodeEntry,
    FailureType,
    Hazard,
    HowTo,
    Lamp,
    Module,
    System,
    Term,
    Tool,
    Vehicle,
    Word,
)
from builder.model.shop import Shop
from builder.model.silence import Silence
from builder.model.summary import Gist, HandOver, Summary, gist_of


class Trees(Mapping[str, Summary]):
    """Summaries by id, each made when it is first asked for, and the gists of all."""

    def __init__(self, gists: Mapping[str, Gist], summary: Callable[[Gist], Summary]) -> None:
        """Take the gists of all, and what makes a summary."""
        self.gists = gists
        self._summary = summary
        self._made: dict[str, Summary] = {}

    def __getitem__(self, id_: str) -> Summary:
        """Return the summary of a tree. Raises KeyError where there is none."""
        if id_ not in self._made:
            self._made[id_] = self._summary(self.gists[id_])
        return self._made[id_]

    def __iter__(self) -> Iterator[str]:
        """Go through the ids."""
        return iter(self.gists)

    def __len__(self) -> int:
        """Count the trees."""
        return len(self.gists)


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
    pictures: frozenset[str] = frozenset()  # file names in kb/how-to/pictures
    picture_bytes: Mapping[str, int] = field(default_factory=dict)  # size of each, by its name
    trees: Mapping[str, Summary] = field(default_factory=dict)
    silences: tuple[Silence, ...] = ()  # in the files of the knowledge
    whole: bool = True  # whether every tree could be read without a mistake of text
    entries: Mapping[str, int] = field(default_factory=dict)  # of `tree#step` its number, if known
    gists: Mapping[str, Gist] = field(init=False)
    # By tree, those that hand over to it, each with the step that it enters or "" for the start.
    callers: Mapping[str, tuple[tuple[str, str], ...]] = field(init=False)

    def __post_init__(self) -> None:
        """Sort the hand-overs by the tree they lead to, once for whoever asks tree by tree."""
        trees = self.trees if isinstance(self.trees, Trees) else trees_of(self.trees.values())
        object.__setattr__(self, "gists", trees.gists)
        object.__setattr__(self, "callers", _callers(trees.gists.values()))


def trees_of(summaries: Iterable[Summary]) -> Trees:
    """Return trees whose summaries are all made."""
    made = {of.id: of for of in summaries}
    return Trees({id_: gist_of(of) for id_, of in made.items()}, lambda gist: made[gist.id])


def _callers(gists: Iterable[Gist]) -> dict[str, tuple[tuple[str, str], ...]]:
    found: dict[str, list[tuple[str, str]]] = defaultdict(list)
    for gist in gists:
        if gist.status != "retired":
            for tree, step in gist.leads_to:
                found[tree].append((gist.id, step))
    return {tree: tuple(callers) for tree, callers in found.items()}


def hand_overs_to(library: Library, id_: str) -> Iterator[HandOver]:
    """Yield the hand-overs that lead to a tree, whether it is there or not."""
    for caller in dict.fromkeys(caller for caller, _ in library.callers.get(id_, ())):
        yield from (over for over in library.trees[caller].hand_overs if over.tree == id_)


def entered_at(library: Library, id_: str) -> tuple[str, ...]:
    """Return the steps at which a tree is begun: its start, and where others lead into it."""
    named = (step for _, step in library.callers.get(id_, ()) if step)
    return tuple(dict.fromkeys((library.gists[id_].steps[0], *named)))
