"""A tree as a graph, computed once for all rules.

In: a `Tree` and the steps at which other trees hand off to it. Out: `TreeGraph` with every move,
and the loops in it. The nodes are `Place`s; what is no step of this tree, such as another tree, is
None.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import cast

import networkx as nx

from builder.graph.moves import Move, Place, leading_to, moves_of
from builder.graph.routes import Exit, ExitKind
from builder.model.checks import Check
from builder.model.tree import Action, Step, Tree


@dataclass(frozen=True, slots=True)
class TreeGraph:
    """Every move from place to place that a walk can make."""

    starts: tuple[Place, ...]  # the first step, and where other trees come in
    moves_from: Mapping[Place, tuple[Move, ...]]  # of every place that a walk reaches
    reachable: frozenset[str]  # the steps that a walk reaches
    can_end: frozenset[Place]  # the places from which a walk can reach an end
    moves_into: Mapping[str, tuple[Move, ...]]  # by the step that they lead to
    exits: tuple[tuple[Step, Exit], ...]  # of every step, in the order of the file

    @property
    def moves(self) -> Iterator[Move]:
        """Every move that a walk can make."""
        return (move for moves in self.moves_from.values() for move in moves)


@dataclass(frozen=True, slots=True)
class Loop:
    """A path that comes back to where it began."""

    closing: Move  # the move that leads back
    steps: tuple[str, ...]  # from the step it leads back to, around to it again

    @property
    def text(self) -> str:
        """The loop as a technician would point it out: `a -> b -> a`."""
        return " -> ".join(self.steps)


def graph_of(tree: Tree, entered: Iterable[str]) -> TreeGraph:
    """Build the graph of a tree; `entered` are steps at which other trees hand off to it."""
    starts = [Place(name) for name in (tree.start.id, *entered) if name in tree.steps]
    moves = moves_of(tree)
    moves_from = moves.reachable(starts)
    reachable = frozenset(place.step for place in moves_from)
    ends = (place for place in moves_from if _ends(tree, tree.steps[place.step]))
    previous: dict[Place | None, list[Place]] = defaultdict(list)
    into: dict[str, list[Move]] = defaultdict(list)
    for move in (move for leaving in moves_from.values() for move in leaving):
        previous[move.to].append(move.source)
        if move.to:
            into[move.to.step].append(move)
    return TreeGraph(
        starts=tuple(starts),
        moves_from=moves_from,
        reachable=reachable,
        can_end=frozenset(leading_to([*ends, *previous[None]], previous)),
        moves_into={step: tuple(entering) for step, entering in into.items()},
        exits=moves.exits,
    )


def _ends(tree: Tree, step: Step) -> bool:
    """Whether a walk can end at a step; a step with an error must not look like a loop as well."""
    to_the_shop = (step.at_most or step.each) and not step.spent
    match step.body:
        case Check(results=()) | Action(then=None):
            return True
        case Check() | Action():
            return bool(to_the_shop) or step.id in tree.broken
        case _:
            return True


def loops_in(moves: Iterable[Move], starts: Iterable[Place]) -> Iterator[Loop]:
    """Yield a loop for every move that leads back, so that each loop has one of its own.

    A move leads back when a depth-first walk, which takes the first untried exit of every step,
    comes by it to a place on its own path. Each loop takes the shortest way back to that move.
    """
    moves_from: dict[Place, list[Move]] = {}
    for move in moves:
        if move.to is not None:
            moves_from.setdefault(move.source, []).append(move)
    back = list(_leading_back(moves_from, [*starts, *moves_from]))
    if not back:
        return
    every = (move for leaving in moves_from.values() for move in leaving)
    digraph: nx.DiGraph[Place] = nx.DiGraph((move.source, move.to) for move in every)
    for move in back:
        path = cast("list[Place]", nx.shortest_path(digraph, move.to, move.source))
        yield Loop(move, (*(place.step for place in path), path[0].step))


def _leading_back(moves_from: dict[Place, list[Move]], starts: Iterable[Place]) -> Iterator[Move]:
    done: set[Place] = set()
    for start in starts:
        if start in done:
            continue
        path = {start: iter(moves_from.get(start, ()))}
        while path:
            here = next(reversed(path))
            move = next(path[here], None)
            if move is None:
                done.add(here)
                del path[here]
            elif move.to in path:
                yield move
            elif move.to is not None and move.to not in done:
                path[move.to] = iter(moves_from.get(move.to, ()))


def is_unbounded(tree: Tree, move: Move) -> bool:
    """Whether nothing limits how often a move is made.

    A list ends, a failed verification leads back once, and a step with `at_most` takes its usual
    exits only so often; its `spent` exit is itself not limited.
    """
    kind = move.route.exit.kind
    if kind in (ExitKind.NEXT, ExitKind.STILL_THERE) or move.source.step in tree.broken:
        return False
    return kind is ExitKind.SPENT or not tree.steps[move.source.step].at_most
