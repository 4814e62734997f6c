"""Where the branches of a step lead, as text and as links.

In: a step, its tree, the library. Out: `BranchTarget`s; a `BranchRow` for each result of a check;
the `IncomingBranch`es of every step.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from builder.graph.routes import ExitKind, list_step, routes
from builder.model.checks import Branch, Check, Result
from builder.model.library import Library
from builder.model.tree import Step, Tree
from builder.pages import addresses
from builder.wording.results import result_words
from builder.wording.sentences import joined
from builder.wording.value_text import number_text

_INCOMING_TEXTS = {
    ExitKind.STILL_THERE: "not fixed",
    ExitKind.SPENT: "after the last try",
    ExitKind.CANNOT_TEST: "can't do it",
    ExitKind.NEXT: "next on the list",
}


@dataclass(frozen=True, slots=True)
class BranchTarget:
    """Where a branch leads: a step of this tree, another tree, or plain text."""

    text: str
    href: str = ""
    number: int | None = None


@dataclass(frozen=True, slots=True)
class BranchRow:
    """One result of a check: what the tech sees, what it means, where it leads."""

    result: str
    target: BranchTarget
    means: str = ""
    marks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class IncomingBranch:
    """A branch that leads to a step: the step it comes from, and the result."""

    step: str
    number: int
    result: str


@dataclass(frozen=True, slots=True)
class TreeContext:
    """What a step's view needs from its tree."""

    tree: Tree
    library: Library
    numbers: Mapping[str, int]
    incoming: Mapping[str, tuple[IncomingBranch, ...]]


def tree_context(tree: Tree, library: Library, numbers: Mapping[str, int]) -> TreeContext:
    """Collect the incoming branches of every step, by the number of the step they come from."""
    incoming: dict[str, list[IncomingBranch]] = {id_: [] for id_ in tree.steps}
    for route in routes(tree):
        if route.to is not None:
            result = route.label or _INCOMING_TEXTS.get(route.exit.kind, "")
            incoming[route.to].append(IncomingBranch(route.source, numbers[route.source], result))
    ordered = {
        id_: tuple(sorted(branches, key=lambda branch: branch.number))
        for id_, branches in incoming.items()
    }
    return TreeContext(tree, library, numbers, ordered)


def target_text(target: BranchTarget) -> str:
    """Write where a branch leads: `step 3, Read the voltage`."""
    return f"step {target.number}, {target.text}" if target.number else target.text


def branch_target(context: TreeContext, step: Step, branch: Branch) -> BranchTarget:
    """Return where a branch of a step leads."""
    if branch.back:
        return _back(context, step)
    if branch.next_item:
        return _next_item(context, step)
    if branch.returns:
        return BranchTarget(f"return “{branch.text}”")
    if branch.tree:
        return _handoff(context, branch)
    target = context.tree.steps.get(branch.step or "")
    if target is None:
        return BranchTarget(f"nowhere yet: {branch.text}")
    anchor = addresses.step_anchor(target.id)
    return BranchTarget(target.text, f"#{anchor}", context.numbers[target.id])


def _back(context: TreeContext, step: Step) -> BranchTarget:
    numbers = sorted({branch.number for branch in context.incoming[step.id]})
    if len(numbers) == 1:
        (caller,) = {branch.step for branch in context.incoming[step.id]}
        text = f"back to {context.tree.steps[caller].text}"
        return BranchTarget(text, f"#{addresses.step_anchor(caller)}", numbers[0])
    which = joined(map(str, numbers), "or")
    return BranchTarget(f"back to the step that led here: {which}")


def _next_item(context: TreeContext, step: Step) -> BranchTarget:
    repeated = list_step(context.tree, step)
    if repeated is None:
        return BranchTarget("next on the list")
    each = context.tree.steps[repeated].each
    item = each[0] if each else "item"
    anchor = addresses.step_anchor(repeated)
    return BranchTarget(f"the next {item}", f"#{anchor}", context.numbers[repeated])


def _handoff(context: TreeContext, branch: Branch) -> BranchTarget:
    other = context.library.trees.get(branch.tree or "")
    anchor = addresses.step_anchor(branch.step) if branch.step else ""
    here, there = addresses.page_of(context.tree), addresses.tree_path(str(branch.tree))
    href = addresses.href(here, there, anchor) if other else ""
    number = context.library.entry_numbers.get(str(branch.text))
    step = f", step {number}" if number else ""
    title = other.title if other else branch.tree
    return BranchTarget(f"continue in the tree “{title}”{step}", href)


def result_rows(context: TreeContext, step: Step, check: Check) -> tuple[BranchRow, ...]:
    """Return the results of a check, in the order of the file."""
    return tuple(
        BranchRow(
            result=result_words(check, result),
            target=branch_target(context, step, result.branch),
            means=str(result.means or ""),
            marks=tuple(_marks(result)),
        )
        for result in check.results
    )


def _marks(result: Result) -> list[str]:
    marks = ["done"] if result.done else []
    marks += [f"{name} is {value}" for name, value in result.with_.items()]
    if result.weight is not None:
        marks.append(f"weight {number_text(result.weight)}")
    if result.chance is not None:
        marks.append(f"{round(result.chance * 100)} in 100 come back")
    return marks
