"""What the changes of the vehicle take on the usual way through a tree.

In: a tree and the library. Out: the tree with the `changeover` of every step, which the minutes
count with the step.

Each step is charged with what is changed on the way into it from the state that its most likely
predecessor leaves, where that one is entered the most likely way too; it isn't the average over all
states in which it can be reached. What a fix needs itself is part of its `hours`, and so is its
verification, which begins in normal state; neither is counted. Going back to normal is, at a stop
and once a fix is done. A procedure is charged as it is from a vehicle in normal state.
"""

from collections import deque
from dataclasses import replace
from fractions import Fraction

from builder.graph.moves import Place
from builder.graph.sound_conditions import conditions_for
from builder.graph.state_changes import Changes, back_to_normal
from builder.graph.tree_paths import paths_of
from builder.graph.vehicle_paths import VehiclePaths
from builder.model.conditions import Conditions
from builder.model.ends import Fix, Stop
from builder.model.library import Library
from builder.model.tree import Changeover, Tree
from builder.plan.chances import WalkChances, walk_chances
from builder.plan.forward_graph import ForwardEdge, ForwardGraph, forward_graph

ZERO = Fraction(0)


def with_changeovers(tree: Tree, library: Library) -> Tree:
    """Return the tree with its changeovers; one that names no state as it is."""
    paths = paths_of(tree, library, ())
    if paths is None:
        return tree
    graph = forward_graph(tree)
    usual = _usual_places(paths, graph, walk_chances(tree, graph))
    conditions = conditions_for(library)
    costs = {name: _changeover(conditions, paths, place) for name, place in usual.items()}
    steps = {
        name: replace(step, changeover=costs[name]) if name in costs else step
        for name, step in tree.steps.items()
    }
    return replace(tree, steps=steps)


def _usual_places(
    paths: VehiclePaths, graph: ForwardGraph, chances: WalkChances
) -> dict[str, Place]:
    """Return for each step the state in which it is mostly entered."""
    usual: dict[str, Place] = {graph.order[0]: paths.starts[0]}
    for name in graph.order[1:]:
        edges = sorted(graph.incoming[name], key=lambda edge: -chances.routes[edge.key])
        places = (_led_to(paths, usual[edge.source], edge) for edge in edges
                  if edge.source in usual)  # fmt: skip
        place = next((place for place in places if place), None)
        if place:
            usual[name] = place
    return usual


def _led_to(paths: VehiclePaths, source: Place, edge: ForwardEdge) -> Place | None:
    """Return where an edge leads from a place, through the procedure that its step runs."""
    queue, seen = deque([source]), {source}
    while queue:
        for move in paths.moves_from.get(queue.popleft(), ()):
            to = move.to
            if to is None or to in seen:
                continue
            if not to.calls and to.step == edge.to:
                return to
            if to.calls and to.calls[0].step == source.step:
                seen.add(to)
                queue.append(to)
    return None


def _changeover(conditions: Conditions, paths: VehiclePaths, place: Place) -> Changeover:
    entry = paths.entries.get(place)
    if entry is None:
        return Changeover(ZERO, ZERO)
    if isinstance(entry.step.body, Fix):
        return _sum(back_to_normal(conditions, place.states)[0])
    if isinstance(entry.step.body, Stop):
        return _sum((*entry.changed, *back_to_normal(conditions, entry.states)[0]))
    return _sum(entry.changed)


def _sum(changes: Changes) -> Changeover:
    return Changeover(
        sum((Fraction(change.minutes) for change in changes), ZERO),
        sum((Fraction(change.wait) for change in changes), ZERO),
    )
