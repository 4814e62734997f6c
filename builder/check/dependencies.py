"""What the findings of each tree depend on besides its own file.

In: a library. Out: a library that records lookups, and a hash for each tree: while the hash and the
tree's file stay the same, so do its findings.

Rules declare nothing: their lookups in the knowledge are recorded entry by entry while they judge a
tree, so a change to one tool affects only the trees that name it. Every finding depends on the
shop's settings. No rule for single trees knows the date. A tree that others lead into also depends
on every tree from which a walk can reach it, however far away.
"""

from collections.abc import (
    Callable,
    Collection,
    ItemsView,
    Iterable,
    Iterator,
    Mapping,
    ValuesView,
)
from dataclasses import fields, is_dataclass, replace
from functools import cache
from typing import Any, TypeVar

import networkx as nx

from builder.cache.digest import digest
from builder.model.finding import Finding
from builder.model.library import Library
from builder.model.text import Position

ALL = "*"  # every entry of a kind, recorded when a rule iterates over them
KNOWLEDGE_KINDS = (
    "systems", "lamps", "hazards", "conditions", "procedures", "specs", "parts", "tools",
    "vehicles", "codes", "failure_types", "glossary", "words", "house_words", "same_words",
    "how_tos", "modules", "cases", "pictures",
)  # fmt: skip
Used = set[tuple[str, str]]  # kind and id
T = TypeVar("T")


class Observed(Mapping[str, T]):
    """A mapping that records which of its entries are looked up."""

    def __init__(self, kind: str, entries: Mapping[str, T], used: Used) -> None:
        """Wrap entries of a kind; lookups are added to `used`."""
        self.kind, self.entries, self.used = kind, entries, used

    def __getitem__(self, id_: str) -> T:
        """Return an entry. Raises KeyError where there is none, which is recorded too."""
        self.used.add((self.kind, str(id_)))
        return self.entries[id_]

    def __contains__(self, id_: object) -> bool:
        """Return whether there is such an entry."""
        self.used.add((self.kind, str(id_)))
        return id_ in self.entries

    def __iter__(self) -> Iterator[str]:
        """Iterate over the IDs of all entries."""
        self.used.add((self.kind, ALL))
        return iter(self.entries)

    def __len__(self) -> int:
        """Count the entries."""
        self.used.add((self.kind, ALL))
        return len(self.entries)

    def items(self) -> ItemsView[str, T]:
        """Return all entries with their IDs."""
        self.used.add((self.kind, ALL))
        return self.entries.items()

    def values(self) -> ValuesView[T]:
        """Return all entries."""
        self.used.add((self.kind, ALL))
        return self.entries.values()


def observed(library: Library, used: Used) -> Library:
    """Return a library that adds every lookup in its knowledge to `used`."""
    maps = {kind: Observed(kind, getattr(library, kind), used) for kind in KNOWLEDGE_KINDS}
    return replace(library, **maps)  # type: ignore[arg-type]


def knowledge_digest(library: Library) -> Callable[[Iterable[tuple[str, str]]], str]:
    """Return a function that hashes the entries of this library with the given kinds and IDs."""
    shop = digest(_content(library.shop))

    @cache
    def of_entry(kind: str, id_: str) -> str:
        entries = getattr(library, kind)
        if id_ == ALL:
            return digest(*((name, _content(value)) for name, value in entries.items()))
        return digest(_content(entries[id_])) if id_ in entries else ""

    return lambda used: digest(shop, " ".join(of_entry(*entry) for entry in used))


def points_elsewhere(file: str, findings: Iterable[Finding]) -> bool:
    """Whether a finding shows a line of another file: it may have moved there without a change."""
    places = (at for one in findings for at in (one.at, *(other.at for other in one.related)))
    return any(at.file != file for at in places)


def neighbor_digests(
    library: Library, shapes: Mapping[str, str], led_into: Collection[str]
) -> dict[str, str]:
    """Return for each tree of `led_into` the hash of all trees from which a walk can reach it.

    `shapes` are hashes of the parts of each tree that other trees may depend on.
    """
    digests: dict[str, str] = {}
    groups = nx.condensation(_upstream(library, led_into))  # trees in a loop share a hash
    group_digests: dict[int, str] = {}
    for group in nx.topological_sort(groups):
        members = sorted(groups.nodes[group]["members"])
        before = sorted(group_digests[other] for other in groups.predecessors(group))
        group_digests[group] = digest(*(shapes[id_] for id_ in members), *before)
        digests |= {id_: group_digests[group] for id_ in members if id_ in led_into}
    return digests


def _upstream(library: Library, led_into: Collection[str]) -> "nx.DiGraph[str]":
    """Return the graph of some trees and of all from which a walk can reach them."""
    digraph: nx.DiGraph[str] = nx.DiGraph()
    digraph.add_nodes_from(led_into)
    visited, pending = set[str](), list(led_into)
    while pending:
        id_ = pending.pop()
        if id_ not in visited:
            visited.add(id_)
            callers = {caller for caller, _ in library.callers.get(id_, ())}
            digraph.add_edges_from((caller, id_) for caller in callers)
            pending += callers
    return digraph


def _content(value: object) -> object:
    """Return the content of a value without its positions: moving a line changes no finding."""
    if isinstance(value, str):  # first, since most values are text
        return str(value)
    if isinstance(value, Position):
        return ()
    if isinstance(value, (tuple, list)):
        return [_content(item) for item in value]
    kind: Any = type(value)
    if names := _field_names(kind):
        return [_content(getattr(value, name)) for name in names]
    if isinstance(value, Mapping):
        return [(str(key), _content(item)) for key, item in value.items()]
    return str(value)


@cache
def _field_names(kind: type[Any]) -> tuple[str, ...]:
    return tuple(field.name for field in fields(kind)) if is_dataclass(kind) else ()
