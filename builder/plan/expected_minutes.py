"""The expected minutes up to each step, and from each step on.

In: a tree's `ForwardGraph`, `WalkChances` and `RetryLoops`, and the cost of each step. Out:
`ExpectedMinutes`, exact.

Up to a step, the minutes are the average over the edges to it, by their share of the walks. A loop
adds the steps on the path back, and the usual path forward again to its source. A walk that leaves
a step by `spent` has done that step as often as `at_most` allows and has gone around as often;
loops by chance through the same step are part of that and are not counted again. On a loop, a step
that was left by `spent` is not done once more. `retry_loops` explains `spent` and has its formula.

The tries that a loop takes are counted for its source. If loops from several steps do the same
limited step again, fewer of them fit into one walk than are counted here. Random walks
(`tests/bench/walks.py`) show by how much: 2% in the worst tree of the demo.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from functools import reduce
from itertools import chain
from operator import add

from builder.plan.chances import WalkChances
from builder.plan.forward_graph import ForwardEdge, ForwardGraph
from builder.plan.retry_loops import ExitKey, RetryLoop, RetryLoops
from builder.plan.step_costs import StepCosts

ZERO, ONE = Fraction(0), Fraction(1)


@dataclass(frozen=True, slots=True)
class ExpectedMinutes:
    """Average minutes, by step."""

    until_done: Mapping[str, Fraction]  # from the start until the step is done
    until_left: Mapping[ExitKey, Fraction]  # until a walk leaves the tree by an exit
    remaining: Mapping[str, Fraction]  # from arriving at the step until the end


@dataclass(frozen=True, slots=True)
class _Sums:
    """The sums so far, from the start down."""

    costs: StepCosts
    arriving: dict[str, Fraction] = field(default_factory=dict)  # until a step is begun
    once: dict[str, Fraction] = field(default_factory=dict)  # until it is done the first time
    done: dict[str, Fraction] = field(default_factory=dict)  # until it is done the last time
    begun_again: dict[str, Fraction] = field(default_factory=dict)  # as `arriving`, on a loop
    done_again: dict[str, Fraction] = field(default_factory=dict)  # as `done`, on a loop
    again: dict[RetryLoop, Fraction] = field(default_factory=dict)  # all iterations of a loop
    spent: dict[str, Fraction] = field(default_factory=dict)  # extra, when it is left by `spent`

    def length(self, loop: RetryLoop) -> Fraction:
        """Return the minutes of one iteration: the path back, and the usual path forward."""
        back = _sum(self.costs.leaving(key) for key in loop.back)
        return back + self.begun_again[loop.source] - self.begun_again[loop.to]


def _sum(minutes: Iterable[Fraction]) -> Fraction:
    return reduce(add, [*minutes] or [ZERO])  # adding 0 to a fraction takes as long as any sum


def expected_minutes(
    graph: ForwardGraph, chances: WalkChances, loops: RetryLoops, costs: StepCosts
) -> ExpectedMinutes:
    """Return the expected minutes; `costs` are the minutes of doing a step once."""
    edges = (edge for outgoing in graph.outgoing.values() for edge in outgoing)
    leaving = [edge for edge in edges if edge.to is None]
    if not any(chain(costs.of_step.values(), costs.beyond.values())):  # few trees have a wait
        none = dict.fromkeys(graph.order, ZERO)
        return ExpectedMinutes(none, dict.fromkeys((edge.key for edge in leaving), ZERO), none)
    sums = _Sums(costs)
    for step in graph.order:
        incoming = _with_shares(graph.incoming[step], chances)
        sums.arriving[step] = _sum(
            share * _until_left(edge, sums, loops) for edge, share in incoming
        )
        sums.once[step] = sums.arriving[step] + costs.of_step[step]
        sums.begun_again[step] = _sum(
            share * _until_left_again(edge, sums) for edge, share in incoming
        )
        step_loops = loops.by_chance.get(step, ())
        for loop in step_loops:
            sums.again[loop] = loop.iterations * sums.length(loop)
        again = _sum(sums.again[loop] for loop in step_loops)
        sums.done[step] = sums.once[step] + again
        sums.done_again[step] = sums.begun_again[step] + costs.of_step[step] + again
        if step in loops.by_spent:
            sums.spent[step] = _extra_when_spent(loops.by_spent[step], loops, sums)
    until_left = {edge.key: _until_left(edge, sums, loops) for edge in leaving}
    return ExpectedMinutes(sums.done, until_left, _remaining(graph, chances, loops, sums))


def _until_left(edge: ForwardEdge, sums: _Sums, loops: RetryLoops) -> Fraction:
    if edge.is_spent:
        return sums.done[edge.source] + _added_by_spent(edge, sums, loops)
    return _with_beyond(sums.done[edge.source], edge, sums.costs)


def _until_left_again(edge: ForwardEdge, sums: _Sums) -> Fraction:
    if edge.is_spent:
        return sums.begun_again[edge.source]
    return _with_beyond(sums.done_again[edge.source], edge, sums.costs)


def _with_beyond(done: Fraction, edge: ForwardEdge, costs: StepCosts) -> Fraction:
    """Add what an exit adds to the cost of its step; few add anything."""
    return done + costs.beyond[edge.key] if edge.key in costs.beyond else done


def _added_by_spent(edge: ForwardEdge, sums: _Sums, loops: RetryLoops) -> Fraction:
    """Return what `spent` adds to the minutes up to its source.

    A walk that goes on by it has gone around a fixed number of times, not the average.
    """
    repeating = [loop for loop in sums.again if _repeats(loop, edge.source, loops)]
    return sums.spent.get(edge.source, ZERO) - _sum(sums.again[loop] for loop in repeating)


def _with_shares(
    edges: Iterable[ForwardEdge], chances: WalkChances
) -> list[tuple[ForwardEdge, Fraction]]:
    """Pair edges with their shares of the walks that take one of them; even shares if none does."""
    edges = list(edges)
    if len(edges) == 1:  # as most are
        return [(edges[0], ONE)]
    taken = _sum(chances.routes[edge.key] for edge in edges)
    if not taken:
        return [(edge, Fraction(1, len(edges))) for edge in edges]
    return [(edge, chances.routes[edge.key] / taken) for edge in edges]


def _extra_when_spent(loop: RetryLoop, loops: RetryLoops, sums: _Sums) -> Fraction:
    """Return what a walk that leaves a step by `spent` has done besides doing it once.

    All its iterations, minus the last time at the step: when it comes up once more, it isn't begun.
    """
    here = loop.source
    inner = [one for one in sums.again if _repeats(one, here, loops) and one.source != here]
    on_loop = _sum(sums.again[one] for one in inner if loop.to in loops.dominators[one.source])
    return loop.iterations * (sums.length(loop) - on_loop) - sums.costs.of_step[here]


def _repeats(loop: RetryLoop, step: str, loops: RetryLoops) -> bool:
    """Whether every walk to a step has passed the source of a loop that does the step again."""
    is_passed = loop.source in loops.dominators[step]
    return is_passed and (step == loop.source or step in loop.between)


def _remaining(
    graph: ForwardGraph, chances: WalkChances, loops: RetryLoops, sums: _Sums
) -> dict[str, Fraction]:
    remaining: dict[str, Fraction] = {}
    spent = [edge for step in graph.order for edge in graph.outgoing[step] if edge.is_spent]
    for step in reversed(graph.order):
        here = chances.steps[step]
        goes_on = 1 - chances.ends[step] / here if chances.ends.get(step) else 1
        onward = _sum(
            share * _from_exit_on(edge, sums, remaining[edge.to] if edge.to else ZERO)
            for edge, share in _with_shares(graph.outgoing[step], chances)
        )
        remaining[step] = sums.costs.of_step[step] + goes_on * onward
        for loop in loops.by_chance.get(step, ()):
            others = [edge for edge in spent if _repeats(loop, edge.source, loops)]
            by_spent = _sum(chances.routes[edge.key] for edge in others)
            by_chance = 1 - by_spent / here if here else not others
            remaining[step] += by_chance * sums.again[loop]
    return remaining


def _from_exit_on(edge: ForwardEdge, sums: _Sums, after: Fraction) -> Fraction:
    if edge.is_spent:
        return after + sums.spent.get(edge.source, ZERO)
    return _with_beyond(after, edge, sums.costs)
