"""Cautions that no longer come before a step.

In: a tree before and after, with the shop's conditions. Out: for each hazard the steps that it was
shown before or at, on every path, and isn't any more.
"""

from collections.abc import Mapping

from builder.graph.cautions import on_paper
from builder.graph.tree_graph import graph_of
from builder.model.conditions import Conditions
from builder.model.tree import Tree
from builder.review.plain_values import Names

Hazards = frozenset[str]


def lost_cautions(
    old: Tree, new: Tree, before: Conditions, after: Conditions, names: Names
) -> Mapping[str, list[str]]:
    """Return the steps of the new tree by hazard, in their order."""
    was = {names.get(step, step): hazards for step, hazards in _warned(old, before).items()}
    lost: dict[str, list[str]] = {}
    for step, hazards in _warned(new, after).items():
        for hazard in sorted(was.get(step, frozenset()) - hazards):
            lost.setdefault(hazard, []).append(step)
    return lost


def _warned(tree: Tree, conditions: Conditions) -> dict[str, Hazards]:
    """Return the hazards that were shown on every path to a step, or are shown at it."""
    graph = graph_of(tree, ())
    own = {name: _own(tree, name, conditions) for name in graph.reachable}
    before: dict[str, set[str]] = {name: set() for name in own}
    for move in graph.moves:
        if move.to is not None and move.to.step != move.source.step:
            before[move.to.step].add(move.source.step)
    everything = frozenset().union(*own.values())
    warned = dict.fromkeys(own, everything)
    start = tree.start.id
    waiting = set(own)
    while waiting:
        name = waiting.pop()
        known = [warned[one] for one in before[name]]
        arriving = everything.intersection(*known) if known and name != start else frozenset()
        if warned[name] != arriving | own[name]:
            warned[name] = arriving | own[name]
            waiting |= {one for one, sources in before.items() if name in sources}
    return {name: warned[name] for name in tree.steps if name in warned}


def _own(tree: Tree, name: str, conditions: Conditions) -> Hazards:
    return frozenset(on_paper(conditions, tree.steps[name])[1])
