"""What the findings of each tree rest on beside its own file.

In: a library. Out: for each tree a hash; while it and the tree's file stay the same, so do the
findings. All rest on the knowledge and the day. A tree that others lead into the middle of also
rests on every tree from which a walk can come to it, however far away.
"""

from collections.abc import Collection, Mapping

import networkx as nx

from builder.check.memory import hashed
from builder.model.library import Library


def grounds(
    library: Library, shapes: Mapping[str, str], led_into: Collection[str], common: str
) -> dict[str, str]:
    """Return for each tree the hash of what it rests on.

    `shapes` are hashes of what of each tree others may rest on, `common` is one of what all do.
    """
    found = dict.fromkeys(library.gists, common)
    parts = nx.condensation(_leading(library, led_into))  # trees in a ring rest on each other
    said: dict[int, str] = {}
    for part in nx.topological_sort(parts):
        members = sorted(parts.nodes[part]["members"])
        before = sorted(said[other] for other in parts.predecessors(part))
        said[part] = hashed(*(shapes[id_] for id_ in members), *before)
        found |= {id_: hashed(common, said[part]) for id_ in members if id_ in led_into}
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
