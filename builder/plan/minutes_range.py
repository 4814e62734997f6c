"""The shortest and longest minutes that a walk can take from each step on.

In: a `Tree` and its `ForwardGraph`. Out: `MinutesRange`, exact.

Every walk that the tree allows counts, with all the repeats that `at_most` allows. A step is done
as often as that, and left by `spent` (without it, to the shop's `stuck`) when it comes up once
more. `cannot_test` and `still_there` are not walked, unless nothing else leads to their target. A
list of unknown length counts one item, a loop without a limit one iteration. If the repeats of a
loop combine in too many ways to count, every step counts once, and `includes_repeats` is false.
"""

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import NamedTuple

import networkx as nx

from builder.graph.moves import Move, Moves, Place, moves_of
from builder.graph.routes import ExitKind, exits
from builder.model.ends import Ending, Return
from builder.model.tree import Outcome, Tree
from builder.plan.forward_graph import ForwardGraph
from builder.plan.retry_loops import max_visits
from builder.plan.step_costs import costs_by_exit, work_of_steps

MAX_STATES = 30_000
MAX_COUNTS = 300_000  # of visits to a step, over all states: for time and memory
ZERO = Fraction(0)
NOTHING = (ZERO, ZERO)
Bounds = tuple[Fraction, Fraction]  # shortest and longest minutes


@dataclass(frozen=True, slots=True)
class MinutesRange:
    """Shortest and longest minutes remaining, by step, its own included."""

    shortest: Mapping[str, Fraction]
    longest: Mapping[str, Fraction]
    includes_repeats: bool = True  # whether limited repeats are in the longest


class WalkState(NamedTuple):
    """A walk at a place, and what it has done of the loop that the place is in."""

    place: Place
    done: tuple[tuple[str, int], ...] = ()  # limited steps of the loop, and how often


@dataclass(frozen=True, slots=True)
class _Walks:
    """The possible moves, and how often each step may be done."""

    tree: Tree
    word: str | None  # only the walks that return it count
    cost: Mapping[str, Fraction]
    runs: Mapping[str, Mapping[int, Bounds]]  # of procedures, by step and exit
    moves: Mapping[Place, tuple[Move, ...]]
    component: Mapping[Place, int]  # places that lead to each other have the same number
    most: Mapping[str, int]  # visits allowed, of the steps on loops


def minutes_range(tree: Tree, graph: ForwardGraph, word: str | None = None) -> MinutesRange:
    """Return the range; of a procedure, with a word, that of the walks that return it.

    A step from which no walk returns the word is left out.
    """
    all_moves = moves_of(tree)
    places = all_moves.reachable(Place(step) for step in graph.order)
    moves = {place: tuple(_walked(tree, graph, all_moves, place)) for place in places}
    component, most = _components(tree, moves)
    cost, runs = work_of_steps(tree), _runs(tree)
    walks = _Walks(tree, word, cost, runs, moves, component, most)
    known = _bounds(walks, map(WalkState, places))
    if known is None:
        return _each_step_once(graph, walks)
    by_step: dict[str, list[Bounds]] = defaultdict(list)
    for state, bounds in known.items():
        if bounds and not state.done:
            by_step[state.place.step].append(bounds)
    return MinutesRange(
        shortest={step: min(low for low, _ in pairs) for step, pairs in by_step.items()},
        longest={step: max(high for _, high in pairs) for step, pairs in by_step.items()},
    )


def _runs(tree: Tree) -> dict[str, dict[int, Bounds]]:
    """Return the shortest and longest minutes of every procedure, by step and exit."""
    runs: dict[str, dict[int, Bounds]] = {}
    for name, step in tree.steps.items():
        if step.run:
            low = costs_by_exit(step, step.run, _shortest)
            high = costs_by_exit(step, step.run, _longest)
            runs[name] = {index: (low[index], high[index]) for index in low}
    return runs


def _shortest(outcome: Outcome) -> Fraction:
    return outcome.shortest


def _longest(outcome: Outcome) -> Fraction:
    return outcome.longest


def _walked(tree: Tree, graph: ForwardGraph, moves: Moves, place: Place) -> Iterator[Move]:
    usual = {edge.exit.kind for edge in graph.outgoing.get(place.step, ())}
    for move in moves.moves_from(place) if place.step not in tree.broken else ():
        kind = move.route.exit.kind
        if kind not in (ExitKind.CANNOT_TEST, ExitKind.STILL_THERE) or kind in usual:
            yield move


def _components(
    tree: Tree, moves: Mapping[Place, Iterable[Move]]
) -> tuple[dict[Place, int], dict[str, int]]:
    """Number the strongly connected components, and find how often each step on one may be done."""
    graph: nx.DiGraph[Place] = nx.DiGraph()
    graph.add_nodes_from(moves)
    graph.add_edges_from((m.source, m.to) for some in moves.values() for m in some if m.to)
    components = list(nx.strongly_connected_components(graph))
    most: dict[str, int] = {}
    for places in components:
        if len(places) > 1 or any(graph.has_edge(place, place) for place in places):
            limits = {place.step: max_visits(tree, place.step) for place in places}
            most |= {step: times for step, times in limits.items() if times}
            unlimited = graph.subgraph(place for place in places if place.step not in most)
            most |= {place.step: 1 for place in _on_loops(unlimited)}
    numbers = {place: number for number, places in enumerate(components) for place in places}
    return numbers, most


def _on_loops(graph: "nx.DiGraph[Place]") -> Iterator[Place]:
    for places in nx.strongly_connected_components(graph):
        yield from (p for p in places if len(places) > 1 or graph.has_edge(p, p))


class _Choice(NamedTuple):
    """One way on from a step."""

    minutes: Bounds  # what leaving by it adds
    state: WalkState | None  # None is an end


def _bounds(walks: _Walks, starts: Iterable[WalkState]) -> dict[WalkState, Bounds | None] | None:
    """Follow every walk to its end, each state once; None if there are too many states.

    The bounds of a state are None where no walk that counts goes on from it.
    """
    known: dict[WalkState, Bounds | None] = {}
    counts = 0
    opened: dict[WalkState, tuple[Fraction, list[_Choice]]] = {}
    stack = list(starts)
    while stack:
        state = stack[-1]
        if state not in opened:
            opened[state] = _open_state(walks, state)
            following = [one.state for one in opened[state][1] if one.state]
            stack += [one for one in following if one not in opened]
            counts += len(state.done)
            if len(opened) > MAX_STATES or counts > MAX_COUNTS:
                return None
            continue
        stack.pop()
        if state not in known:
            cost, choices = opened[state]
            onward = [bounds for one in choices if (bounds := _after(one, known))]
            if not onward and walks.word is None:
                onward = [NOTHING]
            lows, highs = [low for low, _ in onward], [high for _, high in onward]
            known[state] = (cost + min(lows), cost + max(highs)) if onward else None
    return known


def _after(choice: _Choice, known: Mapping[WalkState, Bounds | None]) -> Bounds | None:
    after = known.get(choice.state) if choice.state else NOTHING
    if after is None or choice.minutes is NOTHING:
        return after
    return choice.minutes[0] + after[0], choice.minutes[1] + after[1]


def _open_state(walks: _Walks, state: WalkState) -> tuple[Fraction, list[_Choice]]:
    """Return what a step costs now, and every way on."""
    step = state.place.step
    done = Counter(dict(state.done))
    is_spent = done[step] >= walks.most[step] if step in walks.most else False
    if step in walks.most and not is_spent:
        done[step] += 1
    moves = [
        move
        for move in walks.moves[state.place]
        if (move.route.exit.kind is ExitKind.SPENT) == is_spent
    ]
    choices = [
        _Choice(_leaving(walks, move), _arrive(walks, state, move.to, done) if move.to else None)
        for move in moves
        if move.to or _counts(walks, move.route.exit.branch.text)
    ]
    if _ends(walks, step) or (not moves and walks.word is None):
        choices.append(_Choice(NOTHING, None))
    return ZERO if is_spent else walks.cost[step], choices


def _leaving(walks: _Walks, move: Move) -> Bounds:
    """Return what the procedure of a step takes until it returns the word of this move."""
    runs = walks.runs.get(move.source.step)
    if runs is None:
        return NOTHING
    index = exits(walks.tree.steps[move.source.step]).index(move.route.exit)
    return runs.get(index, NOTHING)


def _counts(walks: _Walks, word: str) -> bool:
    return walks.word in (None, word)


def _ends(walks: _Walks, name: str) -> bool:
    step = walks.tree.steps[name]
    if isinstance(step.body, Return):
        return _counts(walks, step.text)
    return isinstance(step.body, Ending)


def _arrive(walks: _Walks, state: WalkState, place: Place, done: Counter[str]) -> WalkState:
    """Move to a place; outside the loop, the visits to its steps no longer count."""
    same = walks.component[place] == walks.component[state.place]
    return WalkState(place, tuple(sorted(done.items())) if same else ())


def _each_step_once(graph: ForwardGraph, walks: _Walks) -> MinutesRange:
    """Count every step once; a procedure by its shortest and longest word."""
    shortest: dict[str, Fraction] = {}
    longest: dict[str, Fraction] = {}
    for step in reversed(graph.order):
        targets = [edge.to for edge in graph.outgoing[step]]
        lows = [shortest[to] if to else ZERO for to in targets]
        highs = [longest[to] if to else ZERO for to in targets]
        words = walks.runs.get(step, {}).values()
        own_low, own_high = (
            choose((bounds[at] for bounds in words), default=ZERO)
            for at, choose in enumerate((min, max))
        )
        shortest[step] = walks.cost[step] + own_low + min(lows, default=ZERO)
        longest[step] = walks.cost[step] + own_high + max(highs, default=ZERO)
    return MinutesRange(shortest, longest, includes_repeats=False)
