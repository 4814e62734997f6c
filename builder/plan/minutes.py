"""The minutes that a tree takes: expected, shortest, longest; of the whole and from each step on.

In: a `Tree`. Out: its `Minutes`, exact.

Minutes are work: the `minutes` of each step, as often as it is done. A step without `minutes`
counts 0, or as long as the step whose method it takes (`same_as`). `wait` is kept beside them and
never added. Labour for a repair (`hours`) is priced in the options and is not in here. A walk that
hands off to another tree is counted up to there; one that fails its verification begins anew and
is not counted on. Nor is the round that `could_not` makes.

A way back is taken as often as its `chance` says by the walks that use nothing up, and as often as
`at_most` allows by those that leave a step by `spent`, see `laps`; without a chance by these alone.
The minutes of a fix are those of the walks that end there, so that the expected minutes of a tree
are the sum over its ends of chance times minutes.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from builder.model.text import Number
from builder.model.tree import Fix, Step, Tree
from builder.plan.chances import chances
from builder.plan.course import course
from builder.plan.expected import expected
from builder.plan.extremes import extremes
from builder.plan.laps import laps


@dataclass(frozen=True, slots=True)
class Left:
    """Minutes from arriving at a step to the end, its own included."""

    expected: Fraction
    shortest: Fraction
    longest: Fraction
    wait: Fraction  # expected waiting, beside the work


@dataclass(frozen=True, slots=True)
class AtFix:
    """A fix: the share of the walks that end there, and the minutes that those take."""

    chance: Fraction
    minutes: Fraction


@dataclass(frozen=True, slots=True)
class Minutes:
    """Minutes of work of a tree."""

    expected: Fraction
    shortest: Fraction
    longest: Fraction
    wait: Fraction  # expected waiting, beside the work
    steps: Mapping[str, Left]  # of every step that a walk straight through can come by
    fixes: Mapping[str, AtFix]  # of every fix that can be reached
    repeats: bool = True  # whether the longest has all repeats that `at_most` allows in it


def minutes(tree: Tree) -> Minutes:
    """Work out the minutes of a tree."""
    along = course(tree)
    often = chances(tree, along)
    found = laps(tree, along)
    work = _cost(tree, lambda step: step.minutes)
    usual = expected(along, often, found, work)
    waiting = expected(along, often, found, _cost(tree, lambda step: step.wait))
    ends = extremes(tree, along, work)
    steps = {
        step: Left(usual.left[step], ends.shortest[step], ends.longest[step], waiting.left[step])
        for step in along.order
    }
    start = steps[along.order[0]]
    fixes = {
        step: AtFix(often.ends[step], usual.up_to[step])
        for step in along.order
        if isinstance(tree.steps[step].body, Fix)
    }
    return Minutes(
        start.expected, start.shortest, start.longest, start.wait, steps, fixes, ends.repeats
    )


def _cost(tree: Tree, of: Callable[[Step], Number | None]) -> dict[str, Fraction]:
    return {str(step.id): _of_method(tree, step, of) for step in tree.steps.values()}


def _of_method(tree: Tree, step: Step, of: Callable[[Step], Number | None]) -> Fraction:
    own, method = of(step), tree.steps.get(step.same_as or "")
    if own is None and method is not None:
        own = of(method)
    return Fraction(own) if own is not None else Fraction(0)


Figures = dict[str, float | dict[str, dict[str, float]]]


def as_json(found: Minutes) -> Figures:
    """Return the minutes as `baytree minutes --format json` writes them.

    `{"expected", "shortest", "longest", "fixes": {id: {"chance", "minutes"}}}`: minutes of work,
    chances from 0 to 1, both as binary floating point, not rounded.
    """
    return {
        "expected": float(found.expected),
        "shortest": float(found.shortest),
        "longest": float(found.longest),
        "fixes": {
            step: {"chance": float(fix.chance), "minutes": float(fix.minutes)}
            for step, fix in found.fixes.items()
        },
    }
