"""How each check was last left on the way to a step: what is known there, and what isn't.

In: a tree's graph. Out: for a check and a step the ways in which a walk can arrive, each with the
exit by which it last left the check, and a shortest path of it.
"""

from collections import deque
from dataclasses import dataclass

from builder.graph.moves import Move, Place
from builder.graph.routes import Exit, ExitKind
from builder.graph.tree_graph import TreeGraph
from builder.model.tree import Tree

Mark = Exit | None  # None: the walk hasn't left the check yet


@dataclass(frozen=True, slots=True)
class Arrival:
    """One way to arrive at a step."""

    left_by: Mark  # the exit by which the check was last left
    steps: tuple[str, ...]  # a shortest path, from its start to the step


def arrivals(graph: TreeGraph, check: str, step: str) -> tuple[Arrival, ...]:
    """Return how a walk that arrives at a step last left a check, each way once."""
    parents: dict[tuple[Place, int], tuple[Place, int] | None] = {}
    marks: dict[int, Mark] = {0: None}
    queue: deque[tuple[Place, int]] = deque((start, 0) for start in graph.starts)
    parents.update(dict.fromkeys(queue))
    while queue:
        here = queue.popleft()
        place, mark = here
        for move in graph.moves_from.get(place, ()):
            if move.to is None:
                continue
            left = _mark_of(move, marks) if place.step == check else mark
            there = (move.to, left)
            if there not in parents:
                parents[there] = here
                queue.append(there)
    found = {mark: node for node in reversed(parents) for mark in [node[1]] if node[0].step == step}
    return tuple(Arrival(marks[mark], _path(parents, node)) for mark, node in sorted(
        found.items(), key=lambda item: item[0]))  # fmt: skip


def _mark_of(move: Move, marks: dict[int, Mark]) -> int:
    exit_ = move.route.exit
    mark = id(exit_)
    marks[mark] = exit_
    return mark


def _path(
    parents: dict[tuple[Place, int], tuple[Place, int] | None], node: tuple[Place, int]
) -> tuple[str, ...]:
    steps = [node[0].step]
    before = parents[node]
    while before:
        steps.append(before[0].step)
        before = parents[before]
    return tuple(reversed(steps))


def convicting_checks(tree: Tree, graph: TreeGraph, step: str) -> frozenset[str]:
    """Return the checks that enter a step by a result; empty where one enters it otherwise."""
    moves = graph.moves_into.get(step, ())
    if not all(move.route.exit.kind is ExitKind.RESULT for move in moves):
        return frozenset()
    sources = {move.source.step for move in moves}
    return frozenset(sources & tree.steps.keys())
