"""A tree as a graph, worked out once for all rules.

In: a `Tree` and the steps at which other trees hand over to it. Out: `Graph` with every way on, and
the ways round in it. networkx does the graph work; the nodes are `Place`s, and `END` stands for all
that is no step of this tree: a fix, a stop, another tree, the shop's `stuck`.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import cast

import networkx as nx

from builder.graph.paths import Move, Paths, Place, paths
from builder.graph.routes import ExitKind
from builder.model.tree import Action, Check, Step, Tree

END = Place("")


@dataclass(frozen=True, slots=True)
class Graph:
    """Every way from place to place that can be walked."""

    paths: Paths
    starts: tuple[Place, ...]  # the first step, and where other trees come in
    onward: Mapping[
        Place, tuple[Move, ...]
    ]  # of every place that a walk gets to, the moves from it
    reached: frozenset[str]  # the steps that a walk gets to
    ending: frozenset[Place]  # the places from which a walk can come to an end

    @property
    def moves(self) -> Iterator[Move]:
        """Every move that can be made."""
        return (move for moves in self.onward.values() for move in moves)


@dataclass(frozen=True, slots=True)
class WayRound:
    """A way that comes back to where it began."""

    closing: Move  # the move that leads back
    steps: tuple[str, ...]  # from the step led back to, round to it again

    @property
    def shown(self) -> str:
        """The way as a technician would point it out: `a -> b -> a`."""
        return " -> ".join(self.steps)


def graph_of(tree: Tree, entered: Iterable[str]) -> Graph:
    """Work out the graph of a tree; `entered` are steps at which other trees hand over to it."""
    ways = paths(tree)
    starts = [Place(name) for name in (tree.start.id, *entered) if name in tree.steps]
    onward = ways.onward(starts)
    digraph: nx.DiGraph[Place] = nx.DiGraph()
    digraph.add_node(END)
    digraph.add_edges_from((m.source, m.to or END) for moves in onward.values() for m in moves)
    digraph.add_edges_from((place, END) for place in onward if _ends(tree, tree.steps[place.step]))
    steps = frozenset(place.step for place in onward)
    ending: set[Place] = nx.ancestors(digraph, END)
    return Graph(ways, tuple(starts), onward, steps, frozenset(ending))


def _ends(tree: Tree, step: Step) -> bool:
    """Whether a walk can end at a step; what is wrong with it must not look like a loop as well."""
    to_the_shop = (step.at_most or step.each) and not step.spent
    match step.body:
        case Check(results=()) | Action(then=None):
            return True
        case Check() | Action():
            return bool(to_the_shop) or step.id in tree.broken
        case _:
            return True


def ways_round(moves: Iterable[Move], starts: Iterable[Place]) -> Iterator[WayRound]:
    """Yield a way round for every move that leads back, so that each loop has one of its own.

    A move leads back when a walk that takes the first untried way at every step comes by it to a
    place on its own track. Each is told with the shortest way back to it.
    """
    onward: dict[Place, list[Move]] = {}
    for move in moves:
        if move.to is not None:
            onward.setdefault(move.source, []).append(move)
    back = list(_leading_back(onward, [*starts, *onward]))
    edges = [(move.source, move.to) for ways in onward.values() for move in ways] if back else []
    digraph: nx.DiGraph[Place] = nx.DiGraph(edges)
    for move in back:
        there = cast("list[Place]", nx.shortest_path(digraph, move.to, move.source))
        yield WayRound(move, (*(place.step for place in there), there[0].step))


def _leading_back(onward: dict[Place, list[Move]], starts: Iterable[Place]) -> Iterator[Move]:
    done: set[Place] = set()
    for start in starts:
        if start in done:
            continue
        track = {start: iter(onward.get(start, ()))}
        while track:
            here = next(reversed(track))
            move = next(track[here], None)
            if move is None:
                done.add(here)
                del track[here]
            elif move.to in track:
                yield move
            elif move.to is not None and move.to not in done:
                track[move.to] = iter(onward.get(move.to, ()))


def unbounded(tree: Tree) -> Callable[[Move], bool]:
    """Return whether nothing bounds how often a move is made.

    A list ends, a failed proof leads back once, and a step with `at_most` is left as usual only so
    often; what it does when it is used up is itself not bounded.
    """

    def free(move: Move) -> bool:
        way = move.route.exit.kind
        if way in (ExitKind.NEXT, ExitKind.STILL_THERE) or move.source.step in tree.broken:
            return False
        return way is ExitKind.SPENT or not tree.steps[move.source.step].at_most

    return free
