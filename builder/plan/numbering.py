"""The numbers of a tree's steps, in the reading order of its chart.

In: a `Tree`. Out: its lines (the ways that are drawn as such), their outline, and a number for
every step. Page, walk, chart and bench sheet all use these numbers.
"""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from builder.model.routes import Exit, Route, Way, routes
from builder.model.tree import Action, Check, Fix, Stop, Tree
from builder.plan.outline import Lead, Section, Steps, order, outline

DRAWN = frozenset({Way.RESULT, Way.THEN, Way.NEXT, Way.COULD_NOT})
NOTED = frozenset({Way.SPENT, Way.STILL_THERE})


@dataclass(frozen=True, slots=True)
class Line:
    """A way that the chart draws as a line: where it leads and how often it is taken."""

    target: str  # a step, or `hand-over:` and the branch as written
    exit: Exit
    weight: Fraction


def numbering(tree: Tree) -> dict[str, int]:
    """Number every step from 1 in reading order; steps that cannot be reached come last."""
    numbers: dict[str, int] = {}
    for step in order(tree_outline(tree, lines(tree))):
        if step in tree.steps:
            numbers.setdefault(step, len(numbers) + 1)
    return numbers


def lines(tree: Tree) -> dict[str, tuple[Line, ...]]:
    """Return the lines out of each step, in the order of the file.

    The way on after the last permitted try and the way back after a failed verification are notes
    in their step's box; one becomes a line only if nothing else leads to where it goes.
    """
    found = routes(tree)
    reached = _reached(tree, found)
    weights = _weights(tree, found)
    drawn: dict[str, list[Line]] = {step: [] for step in tree.steps}
    for route in found:
        alone = route.exit.way in NOTED and route.to is not None and route.to not in reached
        if route.exit.way in DRAWN or alone:
            target = route.to or hand_over(route)
            weight = weights[route.to] if route.to else Fraction(0)
            drawn[route.source].append(Line(target, route.exit, weight))
    return {step: tuple(out) for step, out in drawn.items()}


def hand_over(route: Route) -> str:
    """Name the box in which another tree is handed over to."""
    return f"hand-over:{route.exit.branch.text}"


def tree_outline(tree: Tree, drawn: Mapping[str, tuple[Line, ...]]) -> tuple[Section, ...]:
    """Put the steps of a tree in reading order."""
    if not tree.steps:
        return ()
    leads = {step: [Lead(line.target, line.weight) for line in out] for step, out in drawn.items()}
    for out in drawn.values():
        leads.update({line.target: [] for line in out if line.target not in tree.steps})
    return outline(
        Steps(
            start=str(tree.start.id),
            leads=leads,
            ends=frozenset(step for step in leads if step not in tree.steps or _ends(tree, step)),
            checks=frozenset(step.id for step in tree.steps.values()
                             if isinstance(step.body, Check)),
        )
    )  # fmt: skip


def _ends(tree: Tree, step: str) -> bool:
    body = tree.steps[step].body
    if isinstance(body, Action):  # an action that only goes back is short enough to be repeated
        return tree.steps[step].spent is None and body.then is not None and body.then.back
    return isinstance(body, Fix | Stop)


def _reached(tree: Tree, found: tuple[Route, ...]) -> set[str]:
    """Return the steps that the drawn ways reach from the start."""
    reached: set[str] = set()
    waiting = [str(tree.start.id)] if tree.steps else []
    while waiting:
        step = waiting.pop()
        if step not in reached:
            reached.add(step)
            waiting += [r.to for r in found if r.source == step and r.to and r.exit.way in DRAWN]
    return reached


def _weights(tree: Tree, found: tuple[Route, ...]) -> dict[str, Fraction]:
    """Weigh each step by the fixes that lie beyond it; a fix's weight is shared by its routes."""
    ways = [route for route in found if route.to and route.exit.way in DRAWN]
    shared = Counter(route.to for route in ways)
    beyond = {step: [r.to for r in ways if r.source == step and r.to] for step in tree.steps}
    weights: dict[str, Fraction] = {}
    on_path: set[str] = set()

    def weigh(step: str) -> Fraction:
        if step in on_path:
            return Fraction(0)
        if step not in weights:
            on_path.add(step)
            total = _own_weight(tree, step) + sum(map(weigh, beyond[step]), Fraction(0))
            on_path.discard(step)
            weights[step] = total / max(shared[step], 1)
        return weights[step]

    return {step: weigh(step) for step in tree.steps}


def _own_weight(tree: Tree, step: str) -> Fraction:
    body = tree.steps[step].body
    weight = body.weight if isinstance(body, Fix | Stop) else None
    return Fraction(weight) if weight is not None else Fraction(0)
