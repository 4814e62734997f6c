"""How often a step is spent: by the chances of the loops, and by the weights of the ends.

In: a `Tree`. Out: a `SpentShares` for every step with an `at_most` for which both are known.

`spent` means: the walk has done the step as often as `at_most` allows, and comes to it once more.
By the chances, that is the share of the walks that go back once too often, see `iterations`: for a
single loop of chance c to a step with `at_most: n`, c**n. By the weights, it is the share of the
walks that end beyond `spent`, see `chances`. Both are shares of all walks of the tree and should be
the same; if they differ, the minutes use the weights. A step on no loop with a chance, or whose
`spent` leads to ends without weight, has one figure only and is left out.
"""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from builder.graph.routes import ExitKind, exits
from builder.model.checks import Check
from builder.model.tree import Tree
from builder.plan.chances import WalkChances, walk_chances
from builder.plan.forward_graph import forward_graph
from builder.plan.retry_loops import RetryLoops, find_retry_loops


@dataclass(frozen=True, slots=True)
class SpentShares:
    """A step that can be spent, and how often it is; shares of all walks."""

    step: str
    by_chances: Fraction
    by_weights: Fraction


def spent_shares(tree: Tree) -> Iterator[SpentShares]:
    """Yield the steps for which chances and weights both give a share, in the order of a walk."""
    checks = (step.body for step in tree.steps.values() if isinstance(step.body, Check))
    if not any(result.chance for check in checks for result in check.results):
        return
    graph = forward_graph(tree)
    loops = find_retry_loops(tree, graph)
    chances = walk_chances(tree, graph)
    by_chances = _by_chances(loops, chances)
    for step in graph.order:
        by_weights = _by_weights(tree, step, chances)
        if step in by_chances and by_weights:
            yield SpentShares(step, by_chances[step], by_weights)


def _by_chances(loops: RetryLoops, chances: WalkChances) -> dict[str, Fraction]:
    """Add up how often the loops spend each step, as shares of all walks."""
    shares: dict[str, Fraction] = defaultdict(Fraction)
    for source, spent in loops.spent_shares.items():
        for step, share in spent.items():
            shares[step] += chances.steps[source] * share
    return shares


def _by_weights(tree: Tree, step: str, chances: WalkChances) -> Fraction:
    spent_exits = (
        index for index, exit_ in enumerate(exits(tree.steps[step])) if exit_.kind is ExitKind.SPENT
    )
    return sum((chances.routes[step, index] for index in spent_exits), Fraction(0))
