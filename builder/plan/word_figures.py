"""How often a procedure returns each word, and how long it takes to.

In: a procedure's tree, the runs of its own steps filled in, and its deeds. Out: its `ProcedureRun`
with all figures. Chances come from its own results; a tree that runs it weighs the words by its own
ends.
"""

from dataclasses import replace
from fractions import Fraction

from builder.model.ends import Return
from builder.model.tree import Outcome, ProcedureRun, Tree
from builder.plan.chances import WalkChances, walk_chances
from builder.plan.expected_minutes import ExpectedMinutes, expected_minutes
from builder.plan.forward_graph import ForwardGraph, forward_graph
from builder.plan.minutes_range import minutes_range
from builder.plan.retry_loops import find_retry_loops
from builder.plan.step_costs import wait_costs, work_costs

ZERO = Fraction(0)
Walks = list[tuple[Fraction, Fraction]]  # the share of some walks, and their minutes


def with_figures(tree: Tree, run: ProcedureRun) -> ProcedureRun:
    """Return the run with chances and minutes of every word."""
    graph = forward_graph(tree)
    chances = walk_chances(tree, graph)
    loops = find_retry_loops(tree, graph)
    work = expected_minutes(graph, chances, loops, work_costs(tree, graph, chances))
    wait = expected_minutes(graph, chances, loops, wait_costs(tree, graph, chances))
    outcomes: dict[str, Outcome] = {}
    for word, outcome in run.outcomes.items():
        limits = minutes_range(tree, graph, word)
        walks = _walks(tree, word, graph, chances, work)
        outcomes[word] = replace(
            outcome,
            chance=sum((share for share, _ in walks), ZERO),
            minutes=_mean(walks),
            wait=_mean(_walks(tree, word, graph, chances, wait)),
            shortest=limits.shortest.get(graph.order[0], ZERO),
            longest=limits.longest.get(graph.order[0], ZERO),
        )
    return replace(run, outcomes=outcomes)


def _walks(
    tree: Tree, word: str, graph: ForwardGraph, chances: WalkChances, minutes: ExpectedMinutes
) -> Walks:
    """Return the walks that return a word, by where they do."""
    ends = [
        step
        for step in graph.order
        if isinstance(tree.steps[step].body, Return) and tree.steps[step].text == word
    ]
    edges = [
        edge.key
        for step in graph.order
        for edge in graph.outgoing[step]
        if edge.exit.branch.returns and edge.exit.branch.text == word
    ]
    return [
        *((chances.ends[step], minutes.until_done[step]) for step in ends),
        *((chances.routes[key], minutes.until_left[key]) for key in edges),
    ]


def _mean(walks: Walks) -> Fraction:
    """Return the average minutes; where no walk is usual, each counts the same."""
    if not any(share for share, _ in walks):
        walks = [(Fraction(1), minutes) for _, minutes in walks]
    total = sum((share for share, _ in walks), ZERO)
    return sum((share * minutes for share, minutes in walks), ZERO) / (total or 1)
