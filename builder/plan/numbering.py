"""The numbers of a tree's steps, in the reading order of its chart.

In: a `Tree`. Out: its `ChartLine`s, their outline, and a number for every step. Page, walk, chart
and bench sheet all use these numbers.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.graph.routes import Exit, ExitKind, Route, exits_of, routes_by
from builder.model.checks import Check
from builder.model.ends import Ending
from builder.model.tree import Action, Step, Tree
from builder.plan.chances import WalkChances, walk_chances
from builder.plan.outline import OutlineEdge, OutlineSection, StepGraph, outline, reading_order

LINE_KINDS = frozenset({ExitKind.RESULT, ExitKind.THEN, ExitKind.NEXT, ExitKind.CANNOT_TEST})
NOTE_KINDS = frozenset({ExitKind.SPENT, ExitKind.STILL_THERE})


@dataclass(frozen=True, slots=True)
class ChartLine:
    """An exit that the chart draws as a line."""

    target: str  # a step, `handoff:` and the branch as written, or `return:` and the word
    exit: Exit
    chance: Fraction  # share of all walks that take it


ChartLines = Mapping[str, tuple[ChartLine, ...]]  # by the step they leave


def numbering(tree: Tree) -> dict[str, int]:
    """Number every step from 1 in reading order; unreachable steps come last."""
    return number_sections(tree, tree_outline(tree, chart_lines(tree)))


def number_sections(tree: Tree, sections: Iterable[OutlineSection]) -> dict[str, int]:
    """Number the steps in the order of an outline."""
    numbers: dict[str, int] = {}
    for step in reading_order(sections):
        if step in tree.steps:
            numbers.setdefault(step, len(numbers) + 1)
    return numbers


def chart_lines(tree: Tree, chances: WalkChances | None = None) -> ChartLines:
    """Return the lines out of each step, in the order of the file.

    Pass the chances of the tree if you have them.

    The exit after the last permitted try and the exit after a failed verification are notes in
    their step's box. Such an exit becomes a line only if nothing else leads to its target.
    """
    if not tree.steps:
        return {}
    pairs = exits_of(tree)
    tree_routes = routes_by(tree, pairs)
    shares = (chances or walk_chances(tree)).routes
    reached = _reached(tree, tree_routes)
    drawn: dict[str, list[ChartLine]] = {str(step): [] for step in tree.steps}
    exits: dict[str, list[Exit]] = {str(step): [] for step in tree.steps}
    for step, exit_ in pairs:
        exits[step.id].append(exit_)
    for route in tree_routes:
        kind = route.exit.kind
        sole_route = kind in NOTE_KINDS and route.to is not None and route.to not in reached
        if kind in LINE_KINDS or sole_route:
            key = route.source, exits[route.source].index(route.exit)
            target = route.to or target_outside(route)
            drawn[route.source].append(ChartLine(target, route.exit, shares[key]))
    return {step: tuple(step_lines) for step, step_lines in drawn.items()}


def target_outside(route: Route) -> str:
    """Name the box of a handoff to another tree, or of a word that a procedure returns."""
    branch = route.exit.branch
    return f"{'return' if branch.returns else 'handoff'}:{branch.text}"


def tree_outline(tree: Tree, lines: ChartLines) -> tuple[OutlineSection, ...]:
    """Put the steps of a tree in reading order."""
    if not tree.steps:
        return ()
    edges = {
        step: [OutlineEdge(line.target, line.chance) for line in step_lines]
        for step, step_lines in lines.items()
    }
    for step_lines in lines.values():
        edges.update({line.target: [] for line in step_lines if line.target not in tree.steps})
    steps = tree.steps.items()
    return outline(
        StepGraph(
            start=str(tree.start.id),
            edges=edges,
            ends=frozenset(step for step in edges if step not in tree.steps or _ends(tree, step)),
            checks=frozenset(name for name, step in steps if isinstance(step.body, Check)),
            ordered={name: _last_result(lines[name]) for name, step in steps if _in_order(step)},
        )
    )


def _in_order(step: Step) -> bool:
    return isinstance(step.body, Check) and step.body.several


def _last_result(step_lines: Sequence[ChartLine]) -> int:
    return max((at for at, line in enumerate(step_lines) if line.exit.result), default=0)


def _ends(tree: Tree, step: str) -> bool:
    body = tree.steps[step].body
    if isinstance(body, Action):  # an action that only goes back is short enough to be repeated
        return tree.steps[step].spent is None and body.then is not None and body.then.back
    return isinstance(body, Ending)


def _reached(tree: Tree, tree_routes: Iterable[Route]) -> set[str]:
    """Return the steps that the drawn routes reach from the start."""
    targets: dict[str, list[str]] = {}
    for route in tree_routes:
        if route.to and route.exit.kind in LINE_KINDS:
            targets.setdefault(route.source, []).append(route.to)
    reached: set[str] = set()
    stack = [str(tree.start.id)]
    while stack:
        step = stack.pop()
        if step not in reached:
            reached.add(step)
            stack += targets.get(step, [])
    return reached
