"""Every route from step to step of a tree, with `back` and `next` resolved.

In: a `Tree`. Out: its `Route`s, the one account of its graph that rules, plan, walk and chart
share.
"""

from collections.abc import Sequence
from enum import StrEnum
from typing import NamedTuple

from builder.model.checks import Branch, Check, Result
from builder.model.ends import Fix
from builder.model.text import Position
from builder.model.tree import Action, Step, Tree


class ExitKind(StrEnum):
    """How a walk leaves a step."""

    RESULT = "result"
    THEN = "then"
    BACK = "back"  # an action returns to the step that led to it
    NEXT = "next"  # to the next item of a list
    STILL_THERE = "still there"  # a verification that failed; taken once
    SPENT = "spent"  # `at_most` is used up, or the list is done
    CANNOT_TEST = "cannot test"
    RUN = "run"  # into a procedure; only where the states along the paths are followed
    VERIFY = "verify"  # on to what proves a repair; likewise


class Exit(NamedTuple):
    """One exit of a step, as written."""

    kind: ExitKind
    branch: Branch
    result: Result | None = None

    @property
    def at(self) -> Position:
        """Where its target is written."""
        return self.branch.text.at


class Route(NamedTuple):
    """One edge from a step to another, or (`to` is None) out of the tree or the procedure."""

    source: str
    to: str | None
    exit: Exit

    @property
    def label(self) -> str:
        """The words beside the arrow."""
        result = self.exit.result
        return str(result.text) if result else ""


def exits(step: Step) -> list[Exit]:
    """Return every exit of a step, in the order of the file."""
    match step.body:
        case Check(results=results, cannot_test=cannot_test):
            step_exits = [_of_result(result) for result in results]
            if cannot_test:
                step_exits.append(Exit(ExitKind.CANNOT_TEST, cannot_test))
        case Action(then=then):
            step_exits = [Exit(_kind_of_then(then), then)] if then else []
        case Fix(still_there=still_there):
            step_exits = [Exit(ExitKind.STILL_THERE, still_there)] if still_there else []
        case _:
            step_exits = []
    if step.spent:
        step_exits.append(Exit(ExitKind.SPENT, step.spent))
    return step_exits


def _of_result(result: Result) -> Exit:
    kind = ExitKind.NEXT if result.branch.next_item else ExitKind.RESULT
    return Exit(kind, result.branch, result)


def _kind_of_then(then: Branch) -> ExitKind:
    if then.back:
        return ExitKind.BACK
    return ExitKind.NEXT if then.next_item else ExitKind.THEN


def exits_of(tree: Tree) -> list[tuple[Step, Exit]]:
    """Return every exit of a tree with its step."""
    return [(step, exit_) for step in tree.steps.values() for exit_ in exits(step)]


def routes(tree: Tree) -> tuple[Route, ...]:
    """Return every route of a tree; `back` gives one to each caller, a bad branch gives none."""
    return routes_by(tree, exits_of(tree))


def routes_by(tree: Tree, pairs: Sequence[tuple[Step, Exit]]) -> tuple[Route, ...]:
    """Return the same, where the exits are known."""
    callers: dict[str, set[str]] = {
        step.id: set() for step, exit_ in pairs if exit_.kind is ExitKind.BACK
    }
    for step, exit_ in pairs if callers else ():
        if exit_.branch.step in callers and exit_.kind not in (ExitKind.BACK, ExitKind.NEXT):
            callers[exit_.branch.step].add(step.id)
    return tuple(
        Route(step.id, to, exit_)
        for step, exit_ in pairs
        for to in _targets(tree, step, exit_, callers)
    )


def _targets(
    tree: Tree, step: Step, exit_: Exit, callers: dict[str, set[str]]
) -> list[str] | list[None] | list[str | None]:
    if exit_.kind is ExitKind.BACK:
        return [caller for caller in tree.steps if caller in callers[step.id]]
    if exit_.kind is ExitKind.NEXT:
        looped = list_step(tree, step)
        return [looped] if looped else []
    if exit_.branch.leaves:
        return [None]
    return [exit_.branch.step] if exit_.branch.step in tree.steps else []


def list_step(tree: Tree, step: Step) -> str | None:
    """Return the step whose list `next` continues: this step, or the last one before it."""
    looped: str | None = None
    for other in tree.steps.values():
        if other.each:
            looped = other.id
        if other.id == step.id:
            break
    return looped
