"""Trees that hand over to each other in a ring.

Why: Whoever follows them is sent from page to page, does the same checks again and never gets an
answer.

Wrong:

    # trees/charging/lamp-on.yml
    steps:
      belt:
        check: Belt tight and dry
        results:
          - {result: yes, branch: charging/overcharge}
          - {result: no, branch: repair}
    # trees/charging/overcharge.yml
    steps:
      voltage:
        check: More than 14.8 V
        results:
          - {result: yes, branch: repair}
          - {result: no, branch: charging/lamp-on}

Right:

    # trees/charging/lamp-on.yml
    steps:
      belt:
        check: Belt tight and dry
        results:
          - {result: yes, branch: charging/overcharge}
          - {result: no, branch: repair}
    # trees/charging/overcharge.yml
    steps:
      voltage:
        check: More than 14.8 V
        results:
          - {result: yes, branch: repair}
          - {result: no, branch: all-good}

Fix: End one of the trees with a fix or a stop, or hand over to a step of the other tree from which
nothing leads back.
"""

from collections.abc import Iterator
from datetime import date
from itertools import pairwise
from typing import TypeVar

import networkx as nx

from builder.model.finding import Finding, Related, Severity
from builder.model.library import Library, entered_at, hand_overs_to
from builder.model.summary import HandOver
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="handover-loop",
    family=Family.FLOW,
    severity=Severity.ERROR,
    summary="Trees that hand over to each other in a ring.",
)
Entry = tuple[str, str]  # a tree and the step at which it is entered
Node = TypeVar("Node", str, Entry)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every ring of trees, on the hand-over that closes it."""
    digraph = _entries(library)
    for ring in _rings(digraph):
        yield _ring(digraph.subgraph(ring))


def _entries(library: Library) -> "nx.DiGraph[Entry]":
    """Join every entry of a tree to the entries that a walk from it can be handed over to.

    Only trees that lead to each other are looked at step by step: mostly there are none.
    """
    digraph: nx.DiGraph[Entry] = nx.DiGraph()
    for trees in _joined(library):
        for over in (over for id_ in sorted(trees) for over in hand_overs_to(library, id_)):
            target = over.tree, over.step or library.listings[over.tree].steps[0]
            for step in entered_at(library, over.from_tree):
                if step in over.reached_from:
                    digraph.add_edge((over.from_tree, step), target, over=over)
    return digraph


def _joined(library: Library) -> Iterator[set[str]]:
    """Yield the sets of trees each of which leads to each, be it by steps no walk joins."""
    digraph: nx.DiGraph[str] = nx.DiGraph()
    for id_, callers in library.callers.items():
        digraph.add_edges_from((caller, id_) for caller, _ in callers)
    yield from _rings(digraph)


def _rings(digraph: "nx.DiGraph[Node]") -> Iterator[set[Node]]:
    """Yield the sets of nodes from each of which a way leads back to it."""
    for nodes in nx.strongly_connected_components(digraph):
        first = next(iter(nodes))
        if len(nodes) > 1 or digraph.has_edge(first, first):
            yield nodes


def _ring(inside: "nx.DiGraph[Entry]") -> Finding:
    first = min(inside, key=lambda entry: (entry[0], entry[1]))
    ways = (nx.shortest_path(inside, after, first) for after in inside.successors(first))
    ring = [first, *min(ways, key=len)]
    overs: list[HandOver] = [inside.edges[edge]["over"] for edge in pairwise(ring)]
    shown = " -> ".join(tree for tree, _ in ring)
    return RULE.finding(
        overs[-1].at,
        f"these trees hand over in a ring: {shown}",
        "whoever follows them is sent round and never gets an answer",
        "end one of them with a fix or a stop, or hand over to a step that does not lead back",
        *(Related(over.at, "and this hand-over is part of it") for over in overs[:-1]),
    )
