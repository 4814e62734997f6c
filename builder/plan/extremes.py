"""The fewest and the most minutes that a walk can take from each step on.

In: a `Tree` and its `Course`. Out: `Extremes`, exact.

Every walk that the tree allows is counted, with all the repeats that `at_most` allows: a step is
begun as often as it says, and left by `spent` (without it, to the shop's `stuck`) when it comes up
once more. Not walked are `could_not` and `still_there`, unless nothing else leads to their target.
A list of unknown length counts one item, a way back without a bound one round. Where the repeats of
a loop can be combined in too many ways to count, every step counts once: `repeats` is then false.
"""

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import NamedTuple

import networkx as nx

from builder.graph.moves import Move, Moves, Place, moves_of
from builder.graph.routes import ExitKind
from builder.model.tree import Fix, Stop, Tree
from builder.plan.course import Course
from builder.plan.laps import most_times

MOST_STATES = 30_000
NOTHING = Fraction(0)
Bounds = tuple[Fraction, Fraction]  # fewest and most minutes


@dataclass(frozen=True, slots=True)
class Extremes:
    """Fewest and most minutes left, by step, its own included."""

    shortest: Mapping[str, Fraction]
    longest: Mapping[str, Fraction]
    repeats: bool = True  # whether bounded repeats are in the longest


class State(NamedTuple):
    """A walk that comes to a place, and what it has done of the loop that the place is in."""

    place: Place
    done: tuple[tuple[str, int], ...] = ()  # bounded steps of the loop, and how often


@dataclass(frozen=True, slots=True)
class _Walk:
    """What can be walked, and how often."""

    tree: Tree
    cost: Mapping[str, Fraction]
    moves: Mapping[Place, tuple[Move, ...]]
    loop: Mapping[Place, int]  # places that lead to each other have the same number
    most: Mapping[str, int]  # of the steps on loops


def extremes(tree: Tree, along: Course, cost: Mapping[str, Fraction]) -> Extremes:
    """Work out the bounds; `cost` is what doing a step once takes."""
    ways = moves_of(tree)
    places = ways.reachable(Place(step) for step in along.order)
    moves = {place: tuple(_walked(tree, along, ways, place)) for place in places}
    loop, most = _loops(tree, moves)
    known = _bounds(_Walk(tree, cost, moves, loop, most), map(State, places))
    if known is None:
        return _each_step_once(along, cost)
    by_step: dict[str, list[Bounds]] = defaultdict(list)
    for state, bounds in known.items():
        if not state.done:
            by_step[state.place.step].append(bounds)
    return Extremes(
        shortest={step: min(low for low, _ in found) for step, found in by_step.items()},
        longest={step: max(high for _, high in found) for step, found in by_step.items()},
    )


def _walked(tree: Tree, along: Course, ways: Moves, place: Place) -> Iterator[Move]:
    usual = {way.exit.kind for way in along.out.get(place.step, ())}
    for move in ways.moves_from(place) if place.step not in tree.broken else ():
        way = move.route.exit.kind
        if way not in (ExitKind.COULD_NOT, ExitKind.STILL_THERE) or way in usual:
            yield move


def _loops(
    tree: Tree, moves: Mapping[Place, Iterable[Move]]
) -> tuple[dict[Place, int], dict[str, int]]:
    """Number the loops, and find how often each step on one may be done."""
    graph: nx.DiGraph[Place] = nx.DiGraph()
    graph.add_nodes_from(moves)
    graph.add_edges_from((m.source, m.to) for found in moves.values() for m in found if m.to)
    parts = list(nx.strongly_connected_components(graph))
    most: dict[str, int] = {}
    for part in parts:
        if len(part) > 1 or any(graph.has_edge(place, place) for place in part):
            bounded = {place.step: most_times(tree, place.step) for place in part}
            most |= {step: times for step, times in bounded.items() if times}
            free = graph.subgraph(place for place in part if place.step not in most)
            most |= {place.step: 1 for place in _on_loops(free)}
    return {place: number for number, part in enumerate(parts) for place in part}, most


def _on_loops(graph: "nx.DiGraph[Place]") -> Iterator[Place]:
    for part in nx.strongly_connected_components(graph):
        yield from (place for place in part if len(part) > 1 or graph.has_edge(place, place))


def _bounds(walk: _Walk, starts: Iterable[State]) -> dict[State, Bounds] | None:
    """Follow every walk to its end, each state once; None if there are too many states."""
    known: dict[State, Bounds] = {}
    opened: dict[State, tuple[Fraction, bool, list[State]]] = {}
    stack = list(starts)
    while stack:
        state = stack[-1]
        if state not in opened:
            opened[state] = _begin(walk, state)
            stack += [on for on in opened[state][2] if on not in opened]
            if len(opened) > MOST_STATES:
                return None
            continue
        stack.pop()
        if state not in known:
            cost, ends, onward = opened[state]
            beyond = [known[on] for on in onward if on in known]
            lows = [low for low, _ in beyond] + [NOTHING] * (ends or not beyond)
            highs = [high for _, high in beyond]
            known[state] = cost + min(lows), cost + max(highs, default=NOTHING)
    return known


def _begin(walk: _Walk, state: State) -> tuple[Fraction, bool, list[State]]:
    """Return what a step costs now, whether the walk can end with it, and where it can go on."""
    step = state.place.step
    done = Counter(dict(state.done))
    used_up = done[step] >= walk.most[step] if step in walk.most else False
    if step in walk.most and not used_up:
        done[step] += 1
    moves = [
        move
        for move in walk.moves[state.place]
        if (move.route.exit.kind is ExitKind.SPENT) == used_up
    ]
    is_end = isinstance(walk.tree.steps[step].body, Fix | Stop)
    ends = is_end or not moves or any(move.to is None for move in moves)
    onward = [_arrive(walk, state, move.to, done) for move in moves if move.to]
    return NOTHING if used_up else walk.cost[step], ends, onward


def _arrive(walk: _Walk, state: State, place: Place, done: Counter[str]) -> State:
    """Come to a place; outside the loop, what was done in it no longer counts."""
    same = walk.loop[place] == walk.loop[state.place]
    return State(place, tuple(sorted(done.items())) if same else ())


def _each_step_once(along: Course, cost: Mapping[str, Fraction]) -> Extremes:
    shortest: dict[str, Fraction] = {}
    longest: dict[str, Fraction] = {}
    for step in reversed(along.order):
        onward = [way.to for way in along.out[step]]
        lows = [shortest[to] if to else NOTHING for to in onward]
        highs = [longest[to] if to else NOTHING for to in onward]
        shortest[step] = cost[step] + min(lows, default=NOTHING)
        longest[step] = cost[step] + max(highs, default=NOTHING)
    return Extremes(shortest, longest, repeats=False)
