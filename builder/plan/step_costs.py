"""What it costs to do a step once: minutes of work, or of waiting.

In: a `Tree`, the shares of its walks. Out: its `StepCosts`. A step that runs a procedure costs what
the procedure takes on average; by which word it is left says how much more or less that was.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from builder.graph.routes import exits
from builder.model.text import Number
from builder.model.tree import Changeover, Outcome, ProcedureRun, Step, Tree
from builder.plan.chances import WalkChances
from builder.plan.forward_graph import ForwardGraph
from builder.plan.retry_loops import ExitKey

ZERO = Fraction(0)
NOTHING_CHANGED = Changeover(ZERO, ZERO)
OfStep = Callable[[Step], Number | None]
OfOutcome = Callable[[Outcome], Fraction]


@dataclass(frozen=True, slots=True)
class StepCosts:
    """The cost of each step, and what an exit adds to it."""

    of_step: Mapping[str, Fraction]
    beyond: Mapping[ExitKey, Fraction] = field(default_factory=dict)  # 0 where it isn't in here

    def leaving(self, key: ExitKey) -> Fraction:
        """Return the cost of doing a step once and leaving it by an exit."""
        return self.of_step[key[0]] + self.beyond.get(key, ZERO)


def work_costs(tree: Tree, graph: ForwardGraph, chances: WalkChances) -> StepCosts:
    """Return the minutes of work of all steps."""
    own = work_of_steps(tree)
    return _with_runs(tree, graph, chances, own, lambda outcome: outcome.minutes)


def wait_costs(tree: Tree, graph: ForwardGraph, chances: WalkChances) -> StepCosts:
    """Return the minutes of waiting of all steps."""
    own = {
        str(step.id): _own(tree, step, lambda one: one.wait) + _changeover(step).wait
        for step in tree.steps.values()
    }
    return _with_runs(tree, graph, chances, own, lambda outcome: outcome.wait)


def work_of_steps(tree: Tree) -> dict[str, Fraction]:
    """Return the work of each step and of what is changed at the vehicle for it.

    A step without `minutes` takes those of its `same_as`.
    """
    return {
        str(step.id): _own(tree, step, lambda one: one.minutes) + _changeover(step).minutes
        for step in tree.steps.values()
    }


def _changeover(step: Step) -> Changeover:
    return step.changeover or NOTHING_CHANGED


def _with_runs(
    tree: Tree,
    graph: ForwardGraph,
    chances: WalkChances,
    own: Mapping[str, Fraction],
    of_outcome: OfOutcome,
) -> StepCosts:
    costs = dict(own)
    beyond: dict[ExitKey, Fraction] = {}
    for name, step in tree.steps.items():
        if step.run:
            by_exit = costs_by_exit(step, step.run, of_outcome)
            costs[name] = _average(name, by_exit, graph, chances)
            beyond |= {(name, index): cost - costs[name] for index, cost in by_exit.items()}
    return StepCosts(costs, beyond)


def costs_by_exit(step: Step, run: ProcedureRun, of_outcome: OfOutcome) -> dict[int, Fraction]:
    """Return what the procedure of a step takes, by the exit of the word that it returns."""
    words = {
        index: str(exit_.result.text)
        for index, exit_ in enumerate(exits(step))
        if exit_.result is not None
    }
    return {
        index: of_outcome(run.outcomes[word])
        for index, word in words.items()
        if word in run.outcomes
    }


def _own(tree: Tree, step: Step, of_step: OfStep) -> Fraction:
    own, method = of_step(step), tree.steps.get(step.same_as or "")
    if own is None and method is not None:
        own = of_step(method)
    return Fraction(own) if own is not None else ZERO


def _average(
    name: str, by_exit: Mapping[int, Fraction], graph: ForwardGraph, chances: WalkChances
) -> Fraction:
    """Weigh the words by the walks that go on with them; evenly where none does."""
    onward = [edge.key for edge in graph.outgoing.get(name, ()) if edge.key[1] in by_exit]
    shares = {key[1]: chances.routes[key] for key in onward}
    if not any(shares.values()):
        shares = dict.fromkeys([key[1] for key in onward] or by_exit, Fraction(1))
    total = sum(shares.values(), ZERO)
    return sum((by_exit[one] * share for one, share in shares.items()), ZERO) / (total or 1)
