"""The numbers of a tree's steps, in the reading order of its chart.

In: a `Tree`. Out: its lines (the ways that are drawn as such), their outline, and a number for
every step. Page, walk, chart and bench sheet all use these numbers.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from builder.graph.routes import Exit, ExitKind, Route, exits, routes
from builder.model.tree import Action, Check, Fix, Stop, Tree
from builder.plan.chances import chances
from builder.plan.outline import Lead, Section, Steps, order, outline

DRAWN = frozenset({ExitKind.RESULT, ExitKind.THEN, ExitKind.NEXT, ExitKind.COULD_NOT})
NOTED = frozenset({ExitKind.SPENT, ExitKind.STILL_THERE})


@dataclass(frozen=True, slots=True)
class Line:
    """A way that the chart draws as a line."""

    target: str  # a step, or `handoff:` and the branch as written
    exit: Exit
    chance: Fraction  # share of all walks that take it


Lines = Mapping[str, tuple[Line, ...]]


def numbering(tree: Tree) -> dict[str, int]:
    """Number every step from 1 in reading order; steps that cannot be reached come last."""
    return numbered(tree, tree_outline(tree, lines(tree)))


def numbered(tree: Tree, sections: Iterable[Section]) -> dict[str, int]:
    """Number the steps in the order of an outline."""
    numbers: dict[str, int] = {}
    for step in order(sections):
        if step in tree.steps:
            numbers.setdefault(step, len(numbers) + 1)
    return numbers


def lines(tree: Tree) -> Lines:
    """Return the lines out of each step, in the order of the file.

    The way on after the last permitted try and the way back after a failed verification are notes
    in their step's box; one becomes a line only if nothing else leads to where it goes.
    """
    if not tree.steps:
        return {}
    found = routes(tree)
    shares = chances(tree).routes
    reached = _reached(tree, found)
    drawn: dict[str, list[Line]] = {str(step): [] for step in tree.steps}
    for route in found:
        alone = route.exit.kind in NOTED and route.to is not None and route.to not in reached
        if route.exit.kind in DRAWN or alone:
            key = route.source, exits(tree.steps[route.source]).index(route.exit)
            drawn[route.source].append(
                Line(route.to or handoff_target(route), route.exit, shares[key])
            )
    return {step: tuple(out) for step, out in drawn.items()}


def handoff_target(route: Route) -> str:
    """Name the box in which another tree is handed off to."""
    return f"handoff:{route.exit.branch.text}"


def tree_outline(tree: Tree, drawn: Lines) -> tuple[Section, ...]:
    """Put the steps of a tree in reading order."""
    if not tree.steps:
        return ()
    leads = {step: [Lead(line.target, line.chance) for line in out] for step, out in drawn.items()}
    for out in drawn.values():
        leads.update({line.target: [] for line in out if line.target not in tree.steps})
    steps = tree.steps.items()
    return outline(
        Steps(
            start=str(tree.start.id),
            leads=leads,
            ends=frozenset(step for step in leads if step not in tree.steps or _ends(tree, step)),
            checks=frozenset(name for name, step in steps if isinstance(step.body, Check)),
        )
    )


def _ends(tree: Tree, step: str) -> bool:
    body = tree.steps[step].body
    if isinstance(body, Action):  # an action that only goes back is short enough to be repeated
        return tree.steps[step].spent is None and body.then is not None and body.then.back
    return isinstance(body, Fix | Stop)


def _reached(tree: Tree, found: Iterable[Route]) -> set[str]:
    """Return the steps that the drawn ways reach from the start."""
    beyond: dict[str, list[str]] = {}
    for route in found:
        if route.to and route.exit.kind in DRAWN:
            beyond.setdefault(route.source, []).append(route.to)
    reached: set[str] = set()
    waiting = [str(tree.start.id)]
    while waiting:
        step = waiting.pop()
        if step not in reached:
            reached.add(step)
            waiting += beyond.get(step, [])
    return reached
