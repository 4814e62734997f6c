"""Every way from step to step of a tree, with `back` and `next` resolved.

In: a `Tree`. Out: its `Route`s, the one account of its graph that rules, plans, walk and charts
share.
"""

from collections import defaultdict
from dataclasses import dataclass
from enum import StrEnum

from builder.model.text import Position
from builder.model.tree import Action, Branch, Check, Fix, Result, Step, Tree


class ExitKind(StrEnum):
    """By what a step is left."""

    RESULT = "result"
    THEN = "then"
    BACK = "back"  # an action's return to whichever step led to it
    NEXT = "next"  # on to the next item of a list
    STILL_THERE = "still there"  # a verification that failed; taken once
    SPENT = "spent"  # `at_most` is used up, or the list is at its end
    COULD_NOT = "could not"


@dataclass(frozen=True, slots=True)
class Exit:
    """One way out of a step as it is written."""

    kind: ExitKind
    branch: Branch
    result: Result | None = None

    @property
    def at(self) -> Position:
        """Where its target is written."""
        return self.branch.text.at


@dataclass(frozen=True, slots=True)
class Route:
    """One way from a step to another of the same tree, or (`to` is None) out of the tree."""

    source: str
    to: str | None
    exit: Exit

    @property
    def label(self) -> str:
        """The words beside the arrow."""
        result = self.exit.result
        return str(result.said) if result else ""


def exits(step: Step) -> list[Exit]:
    """Every way out of a step, in the order of the file."""
    match step.body:
        case Check(results=results, could_not=could_not):
            ways = [Exit(ExitKind.NEXT if r.branch.next_item else ExitKind.RESULT, r.branch, r)
                    for r in results]  # fmt: skip
            if could_not:
                ways.append(Exit(ExitKind.COULD_NOT, could_not))
        case Action(then=then):
            ways = [Exit(_way_on(then), then)] if then else []
        case Fix(still_there=still_there):
            ways = [Exit(ExitKind.STILL_THERE, still_there)] if still_there else []
        case _:
            ways = []
    if step.spent:
        ways.append(Exit(ExitKind.SPENT, step.spent))
    return ways


def _way_on(then: Branch) -> ExitKind:
    if then.back:
        return ExitKind.BACK
    return ExitKind.NEXT if then.next_item else ExitKind.THEN


def routes(tree: Tree) -> tuple[Route, ...]:
    """Every route of a tree; `back` gives one to each caller, a branch to nowhere gives none."""
    ways = [(step, way) for step in tree.steps.values() for way in exits(step)]
    callers: dict[str, set[str]] = defaultdict(set)
    for step, way in ways:
        if way.kind not in (ExitKind.BACK, ExitKind.NEXT) and way.branch.step in tree.steps:
            callers[str(way.branch.step)].add(step.id)
    return tuple(
        Route(step.id, to, way) for step, way in ways for to in _targets(tree, step, way, callers)
    )


def _targets(
    tree: Tree, step: Step, way: Exit, callers: dict[str, set[str]]
) -> list[str] | list[None] | list[str | None]:
    if way.kind is ExitKind.BACK:
        return [caller for caller in tree.steps if caller in callers[step.id]]
    if way.kind is ExitKind.NEXT:
        looped = list_step(tree, step)
        return [looped] if looped else []
    if way.branch.tree:
        return [None]
    return [way.branch.step] if way.branch.step in tree.steps else []


def list_step(tree: Tree, step: Step) -> str | None:
    """Return the step whose list `next` goes on with: this one, or the last before it."""
    looped: str | None = None
    for other in tree.steps.values():
        if other.each:
            looped = other.id
        if other.id == step.id:
            break
    return looped
