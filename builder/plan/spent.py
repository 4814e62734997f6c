"""How often a step is used up: by the chances of the ways back, and by the weights of the ends.

In: a `Tree`. Out: a `UsedUp` for every step whose `at_most` both of them speak of.

`spent` means: the walk has done the step as often as `at_most` allows, and comes to it once more.
By the chances that is the share of the walks that go back once too often, see `rounds`: of a single
way back of chance c to a step with `at_most: n`, c**n. By the weights it is the share of the walks
that end beyond `spent`, see `chances`. Both are shares of all walks of the tree and should be the
same; where they differ, the minutes take the weights. A step on no way back with a chance, or whose
`spent` leads to ends without weight, is spoken of once only, and left out.
"""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from builder.graph.routes import ExitKind, exits
from builder.model.tree import Tree
from builder.plan.chances import Chances, chances
from builder.plan.course import course
from builder.plan.laps import Laps, laps


@dataclass(frozen=True, slots=True)
class UsedUp:
    """A step that is used up now and then, and how often; shares of all walks."""

    step: str
    by_chances: Fraction
    by_weights: Fraction


def used_up(tree: Tree) -> Iterator[UsedUp]:
    """Yield the steps of a tree that chances and weights both speak of, in the order of a walk."""
    along = course(tree)
    found = laps(tree, along)
    if not found.used_up:
        return
    often = chances(tree, along)
    by_chances = _by_chances(found, often)
    for step in along.order:
        by_weights = _by_weights(tree, step, often)
        if step in by_chances and by_weights:
            yield UsedUp(step, by_chances[step], by_weights)


def _by_chances(found: Laps, often: Chances) -> dict[str, Fraction]:
    """Add up what the laps of each step use up, as shares of all walks."""
    shares: dict[str, Fraction] = defaultdict(Fraction)
    for source, bounded in found.used_up.items():
        for step, share in bounded.items():
            shares[step] += often.steps[source] * share
    return shares


def _by_weights(tree: Tree, step: str, often: Chances) -> Fraction:
    ways = enumerate(exits(tree.steps[step]))
    spent = (index for index, way in ways if way.kind is ExitKind.SPENT)
    return sum((often.routes[step, index] for index in spent), Fraction(0))
