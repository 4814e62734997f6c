"""The minutes that a tree takes: expected, shortest, longest; of the whole and from each step on.

In: a `Tree`. Out: its `TreeMinutes`, exact.

Minutes are work: the `minutes` of each step, as often as it is done. A step without `minutes`
counts 0, or as long as the step whose method it takes (`same_as`); one that runs a procedure counts
what the procedure takes to return the word by which it is left. `wait` is kept separate and
never added. Labor for a repair (`hours`) is priced in the estimate options and is not in here. A
walk that hands off to another tree counts up to the handoff. A walk that fails its verification
starts over and is not counted further; neither is the detour of a `cannot_test`.

Walks that spend nothing take a loop as often as its `chance` says. Walks that leave a step by
`spent` take it as often as `at_most` allows, see `retry_loops`; without a chance, only they do. The
minutes of a fix are those of the walks that end there, so the expected minutes of a tree are the
sum over its ends of chance times minutes.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from builder.model.ends import Fix
from builder.model.tree import Tree
from builder.plan.chances import WalkChances, walk_chances
from builder.plan.expected_minutes import expected_minutes
from builder.plan.forward_graph import ForwardGraph, forward_graph
from builder.plan.minutes_range import minutes_range
from builder.plan.retry_loops import find_retry_loops
from builder.plan.step_costs import wait_costs, work_costs


@dataclass(frozen=True, slots=True)
class RemainingMinutes:
    """Minutes from arriving at a step to the end, its own included."""

    expected: Fraction
    shortest: Fraction
    longest: Fraction
    wait: Fraction  # expected waiting, apart from the work


@dataclass(frozen=True, slots=True)
class FixMinutes:
    """A fix: the share of the walks that end there, and the minutes that those take."""

    chance: Fraction
    minutes: Fraction


@dataclass(frozen=True, slots=True)
class TreeMinutes:
    """Minutes of work of a tree."""

    expected: Fraction
    shortest: Fraction
    longest: Fraction
    wait: Fraction  # expected waiting, apart from the work
    steps: Mapping[str, RemainingMinutes]  # of every step of the forward graph
    fixes: Mapping[str, FixMinutes]  # of every fix that can be reached
    includes_repeats: bool  # whether the longest has all repeats that `at_most` allows


def tree_minutes(
    tree: Tree, graph: ForwardGraph | None = None, chances: WalkChances | None = None
) -> TreeMinutes:
    """Return the minutes of a tree; pass its forward graph and its chances if you have them."""
    graph = graph or forward_graph(tree)
    chances = chances or walk_chances(tree, graph)
    loops = find_retry_loops(tree, graph)
    expected = expected_minutes(graph, chances, loops, work_costs(tree, graph, chances))
    wait = expected_minutes(graph, chances, loops, wait_costs(tree, graph, chances))
    limits = minutes_range(tree, graph)
    steps = {
        step: RemainingMinutes(
            expected.remaining[step],
            limits.shortest[step],
            limits.longest[step],
            wait.remaining[step],
        )
        for step in graph.order
    }
    start = steps[graph.order[0]]
    fixes = {
        step: FixMinutes(chances.ends[step], expected.until_done[step])
        for step in graph.order
        if isinstance(tree.steps[step].body, Fix)
    }
    return TreeMinutes(
        start.expected,
        start.shortest,
        start.longest,
        start.wait,
        steps,
        fixes,
        limits.includes_repeats,
    )


MinutesJson = dict[str, float | dict[str, dict[str, float]]]


def minutes_as_json(minutes: TreeMinutes) -> MinutesJson:
    """Return the minutes as `baytree minutes --format json` writes them.

    `{"expected", "shortest", "longest", "fixes": {id: {"chance", "minutes"}}}`: minutes of work,
    chances from 0 to 1, both as binary floating point, not rounded.
    """
    return {
        "expected": float(minutes.expected),
        "shortest": float(minutes.shortest),
        "longest": float(minutes.longest),
        "fixes": {
            step: {"chance": float(fix.chance), "minutes": float(fix.minutes)}
            for step, fix in minutes.fixes.items()
        },
    }
