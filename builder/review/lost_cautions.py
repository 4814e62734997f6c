"""Cautions that no longer come before a step.

In: a tree before and after, each with its shop's knowledge. Out: for each hazard the steps that it
was shown before or at, on every path, and isn't any more; an end without a repair needs none. Of a
procedure only its first step counts: that one is met on every path.
"""

from collections.abc import Mapping

from builder.graph.cautions import on_paper
from builder.graph.moves import Move
from builder.graph.routes import ExitKind
from builder.graph.runs import procedure_of
from builder.graph.tree_graph import graph_of
from builder.model.ends import Stop
from builder.model.library import Library
from builder.model.tree import Tree
from builder.review.plain_values import Names

Hazards = frozenset[str]


def lost_cautions(
    old: Tree, new: Tree, before: Library, after: Library, names: Names
) -> Mapping[str, list[str]]:
    """Return the steps of the new tree by hazard, in their order."""
    was = {names.get(step, step): hazards for step, hazards in _warned(old, before).items()}
    lost: dict[str, list[str]] = {}
    for step, hazards in _warned(new, after).items():
        if isinstance(new.steps[step].body, Stop):
            continue
        for hazard in sorted(was.get(step, frozenset()) - hazards):
            lost.setdefault(hazard, []).append(step)
    return lost


def _warned(tree: Tree, library: Library) -> dict[str, Hazards]:
    """Return the hazards that were shown on every path to a step, or are shown at it."""
    graph = graph_of(tree, ())
    own = {name: _own(tree, name, library) for name in graph.reachable}
    before: dict[str, set[str]] = {name: set() for name in own}
    for move in graph.moves:
        if move.to is not None and move.to.step != move.source.step and _is_written(tree, move):
            before[move.to.step].add(move.source.step)
    start = tree.start.id
    met = _met(start, before)
    everything = frozenset().union(*own.values())
    warned = dict.fromkeys(met, everything)
    waiting = set(met)
    while waiting:
        name = waiting.pop()
        known = [warned[one] for one in before[name] & met]
        arriving = frozenset() if name == start else everything.intersection(*known)
        if warned[name] != arriving | own[name]:
            warned[name] = arriving | own[name]
            waiting |= {one for one in met if name in before[one]}
    return {name: warned[name] for name in tree.steps if name in warned}


def _met(start: str, before: Mapping[str, set[str]]) -> set[str]:
    """Return the steps that are reached from the start by what is in the file."""
    met, growing = {start}, True
    while growing:
        more = {name for name, sources in before.items() if sources & met} - met
        met |= more
        growing = bool(more)
    return met


def _is_written(tree: Tree, move: Move) -> bool:
    """Whether a move is in the file; the graph takes a branch to nowhere as one to a near name."""
    exit_ = move.route.exit
    named = exit_.kind not in (ExitKind.BACK, ExitKind.NEXT)
    return move.source.step not in tree.broken and not (
        named and exit_.branch.step not in tree.steps
    )


def _own(tree: Tree, name: str, library: Library) -> Hazards:
    step = tree.steps[name]
    procedure = procedure_of(step, library.procedures)
    steps = (step, procedure.tree.start) if procedure else (step,)
    return frozenset(hazard for one in steps for hazard in on_paper(library.conditions, one)[1])
