"""What the findings of each tree depend on beside its own file.

In: a library. Out: a library that notes what is looked up in it, and for each tree a hash; while
that and the tree's file stay the same, so do its findings.

Rules declare nothing: what they look up in the knowledge while they judge a tree is noted, entry by
entry, so that a change of one tool concerns the trees that name it and no others. Every finding
depends on the shop's settings. No rule that judges single trees knows the date. A tree that others
lead into also depends on every tree from which a walk can come to it, however far away.
"""

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from dataclasses import fields, is_dataclass, replace
from functools import cache
from typing import TypeVar

import networkx as nx

from builder.cache.digest import digest
from builder.model.library import Library
from builder.model.text import Position

ALL = "*"  # every entry of a kind: somebody went through them
KINDS = (
    "systems", "lamps", "hazards", "conditions", "tools", "vehicles", "codes", "failure_types",
    "glossary", "words", "same_words", "how_tos", "modules", "cases", "pictures",
)  # fmt: skip
Used = set[tuple[str, str]]  # kind and id
T = TypeVar("T")


class Observed(Mapping[str, T]):
    """A map of the knowledge that notes which of its entries are looked up."""

    def __init__(self, kind: str, entries: Mapping[str, T], used: Used) -> None:
        """Take the entries, and where to note them."""
        self.kind, self.entries, self.used = kind, entries, used

    def __getitem__(self, id_: str) -> T:
        """Return an entry. Raises KeyError where there is none, which is noted as well."""
        self.used.add((self.kind, str(id_)))
        return self.entries[id_]

    def __contains__(self, id_: object) -> bool:
        """Whether there is such an entry."""
        self.used.add((self.kind, str(id_)))
        return id_ in self.entries

    def __iter__(self) -> Iterator[str]:
        """Go through the ids of all."""
        self.used.add((self.kind, ALL))
        return iter(self.entries)

    def __len__(self) -> int:
        """Count the entries."""
        self.used.add((self.kind, ALL))
        return len(self.entries)


def observed(library: Library, used: Used) -> Library:
    """Return a library that notes in `used` what is looked up in its knowledge."""
    maps = {kind: Observed(kind, getattr(library, kind), used) for kind in KINDS}
    return replace(library, **maps)  # type: ignore[arg-type]


def knowledge_digest(library: Library) -> Callable[[Iterable[tuple[str, str]]], str]:
    """Return what hashes the knowledge of a list of kinds and ids, as it is in this library."""
    shop = digest(_content(library.shop))

    @cache
    def of_entry(kind: str, id_: str) -> str:
        entries = getattr(library, kind)
        if id_ == ALL:
            return digest(*((name, _content(value)) for name, value in entries.items()))
        return digest(_content(entries[id_])) if id_ in entries else ""

    return lambda used: digest(shop, *(of_entry(*one) for one in used))


def neighbor_digests(
    library: Library, shapes: Mapping[str, str], led_into: Collection[str]
) -> dict[str, str]:
    """Return for each tree of `led_into` the hash of all trees from which a walk can come to it.

    `shapes` are hashes of what of each tree others may depend on.
    """
    found: dict[str, str] = {}
    groups = nx.condensation(_leading(library, led_into))  # trees in a ring depend on each other
    known: dict[int, str] = {}
    for group in nx.topological_sort(groups):
        members = sorted(groups.nodes[group]["members"])
        before = sorted(known[other] for other in groups.predecessors(group))
        known[group] = digest(*(shapes[id_] for id_ in members), *before)
        found |= {id_: known[group] for id_ in members if id_ in led_into}
    return found


def _leading(library: Library, led_into: Collection[str]) -> "nx.DiGraph[str]":
    """Join to some trees all from which a walk can come to them."""
    digraph: nx.DiGraph[str] = nx.DiGraph()
    digraph.add_nodes_from(led_into)
    known, waiting = set[str](), list(led_into)
    while waiting:
        id_ = waiting.pop()
        if id_ not in known:
            known.add(id_)
            callers = {caller for caller, _ in library.callers.get(id_, ())}
            digraph.add_edges_from((caller, id_) for caller in callers)
            waiting += callers
    return digraph


def _content(value: object) -> object:
    """Return what a value says, without where it stands: a line moved down changes no finding."""
    if isinstance(value, Position):
        return ()
    if is_dataclass(value) and not isinstance(value, type):
        return [_content(getattr(value, field.name)) for field in fields(value)]
    if isinstance(value, Mapping):
        return [(str(key), _content(one)) for key, one in value.items()]
    if isinstance(value, (tuple, list)):
        return [_content(one) for one in value]
    return str(value)
