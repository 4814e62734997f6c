"""What follows from the changes of a tree.

In: the tree before and after as the check sees it, and the new names of its steps. Out: `Remark`s.
What can't be told of a tree with mistakes is left out.
"""

from collections.abc import Iterator

from builder.graph.routes import exits
from builder.graph.tree_graph import graph_of, is_unbounded, loops_in
from builder.model.checks import Check
from builder.model.library import Library
from builder.model.tree import Status, Tree
from builder.plan.minutes import tree_minutes
from builder.review.lost_cautions import lost_cautions
from builder.review.lost_steps import steps_out_of_reach, told_out_of_reach
from builder.review.moved_readings import moved_readings
from builder.review.plain_values import Names
from builder.review.remark import Remark, in_code

REVIEW_OLDER = "review is older"


def tree_effects(
    old: Tree, new: Tree, before: Library, after: Library, names: Names
) -> Iterator[Remark]:
    """Yield the effects, the gravest first; of a procedure only the readings."""
    if new.is_procedure:
        yield from _readings(old, new, names)
        return
    yield from _cautions(old, new, before, after, names)
    yield from _readings(old, new, names)
    yield from told_out_of_reach(steps_out_of_reach(old, new, names), new)
    yield from _minutes(old, new)
    yield from _review(old, new)


def _cautions(
    old: Tree, new: Tree, before: Library, after: Library, names: Names
) -> Iterator[Remark]:
    lost = lost_cautions(old, new, before, after, names)
    for hazard, (first, *others) in lost.items():
        more = f" and {len(others)} more step{'s' if len(others) > 1 else ''}" if others else ""
        message = f"the caution {in_code(hazard)} no longer comes before {in_code(first)}{more}"
        yield Remark("caution lost", first, message)


def _readings(old: Tree, new: Tree, names: Names) -> Iterator[Remark]:
    for name, step in old.steps.items():
        other = new.steps.get(names.get(name, ""))
        if name in old.broken or (other and other.id in new.broken):
            continue
        if other and isinstance(step.body, Check) and isinstance(other.body, Check):
            yield from moved_readings(str(other.id), step.body, other.body, names)


def _minutes(old: Tree, new: Tree) -> Iterator[Remark]:
    if not (_can_be_walked(old) and _can_be_walked(new)):
        return
    was, now = (tree_minutes(tree) for tree in (old, new))
    for kind, before, after in (
        ("expected minutes", was.expected, now.expected),
        ("expected waiting", was.wait, now.wait),
    ):
        if round(before) != round(after):
            unit = " min" if kind == "expected waiting" else ""
            message = f"{kind} {round(before)} → {round(after)}{unit}"
            yield Remark(f"{kind} changed", "", message)


def _can_be_walked(tree: Tree) -> bool:
    """Whether every branch has its step, and every walk ends: else there is nothing to count."""
    graph = graph_of(tree, ())
    branches = (exit_.branch for step in tree.steps.values() for exit_ in exits(step))
    named = (
        branch for branch in branches if not (branch.leaves or branch.back or branch.next_item)
    )
    unbounded = [move for move in graph.moves if is_unbounded(tree, move)]
    return (
        not tree.broken
        and all(branch.step in tree.steps for branch in named)
        and all(place in graph.can_end for place in graph.moves_from)
        and not any(loops_in(unbounded, graph.starts))
    )


def _review(old: Tree, new: Tree) -> Iterator[Remark]:
    signed = new.reviewed
    if not signed or not old.reviewed or new.status is not Status.READY:
        return
    if (old.reviewed.by, old.reviewed.date) == (signed.by, signed.date):
        message = f"reviewed by {signed.by} on {signed.date}, before this change"
        yield Remark(REVIEW_OLDER, "", message)
