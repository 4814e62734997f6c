"""Trees that hand off to each other in a loop.

Why: The tech is sent from page to page, repeats the same checks and never gets an answer.

Wrong:

    # trees/charging/lamp-on.yml
    steps:
      belt:
        check: Is the belt tight and dry?
        results:
          - {result: yes, branch: charging/overcharge}
          - {result: no, branch: repair}
    # trees/charging/overcharge.yml
    steps:
      voltage:
        check: Is it more than 14.8 V?
        results:
          - {result: yes, branch: repair}
          - {result: no, branch: charging/lamp-on}

Right:

    # trees/charging/lamp-on.yml
    steps:
      belt:
        check: Is the belt tight and dry?
        results:
          - {result: yes, branch: charging/overcharge}
          - {result: no, branch: repair}
    # trees/charging/overcharge.yml
    steps:
      voltage:
        check: Is it more than 14.8 V?
        results:
          - {result: yes, branch: repair}
          - {result: no, branch: all-good}

Fix: End one of the trees with a fix or a stop, or hand off to a step of the other tree that doesn't
lead back.
"""

from collections.abc import Iterator
from datetime import date
from itertools import chain, pairwise
from typing import TypeVar

import networkx as nx

from builder.model.finding import Finding, Related, Severity
from builder.model.library import Library, entered_at, handoffs_to
from builder.model.summary import Handoff
from builder.rules.shared.order import TreeEntry
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="handover-loop",
    family=Family.FLOW,
    severity=Severity.ERROR,
    summary="Trees that hand off to each other in a loop.",
)
_Node = TypeVar("_Node", str, TreeEntry)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every loop of trees, at the handoff that closes it."""
    digraph = _entry_graph(library)
    for entries in _cyclic_components(digraph):
        yield _loop_finding(digraph.subgraph(entries))


def _entry_graph(library: Library) -> "nx.DiGraph[TreeEntry]":
    """Join every entry of a tree to the entries that a walk from it can hand off to.

    Only trees that lead to each other are followed step by step: mostly there are none.
    """
    digraph: nx.DiGraph[TreeEntry] = nx.DiGraph()
    for trees in _connected_trees(library):
        for handoff in chain.from_iterable(handoffs_to(library, id_) for id_ in sorted(trees)):
            target = handoff.tree, handoff.step or library.listings[handoff.tree].steps[0]
            for step in entered_at(library, handoff.from_tree):
                if step in handoff.reached_from:
                    digraph.add_edge((handoff.from_tree, step), target, handoff=handoff)
    return digraph


def _connected_trees(library: Library) -> Iterator[set[str]]:
    """Yield the sets of trees that all lead to each other, even by steps that no walk joins."""
    digraph: nx.DiGraph[str] = nx.DiGraph()
    for id_, callers in library.callers.items():
        digraph.add_edges_from((caller, id_) for caller, _ in callers)
    yield from _cyclic_components(digraph)


def _cyclic_components(digraph: "nx.DiGraph[_Node]") -> Iterator[set[_Node]]:
    """Yield the sets of nodes that all lead to each other, or to themselves."""
    for nodes in nx.strongly_connected_components(digraph):
        first = next(iter(nodes))
        if len(nodes) > 1 or digraph.has_edge(first, first):
            yield nodes


def _loop_finding(inside: "nx.DiGraph[TreeEntry]") -> Finding:
    first = min(inside, key=lambda entry: (entry[0], entry[1]))
    paths = (nx.shortest_path(inside, after, first) for after in inside.successors(first))
    loop = [first, *min(paths, key=len)]
    handoffs: list[Handoff] = [inside.edges[edge]["handoff"] for edge in pairwise(loop)]
    trees = " -> ".join(tree for tree, _ in loop)
    hint = "end one of them with a fix or a stop, or hand off to a step that doesn't lead back"
    if len({tree for tree, _ in loop}) == 1:
        hint = "this is its own tree: write the tree that was meant, or just a step's name"
    return RULE.finding(
        handoffs[-1].at,
        f"these trees hand off in a loop: {trees}",
        "the tech is sent from page to page and never gets an answer",
        hint,
        *(Related(handoff.at, "this handoff is part of the loop") for handoff in handoffs[:-1]),
    )
