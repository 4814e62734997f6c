"""Where the ways out of a step lead, in words and as links.

In: a step, its tree, the library. Out: `Row`s for results, `then`, `spent` and the rest.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from builder.graph.routes import ExitKind, list_step, routes
from builder.model.library import Library
from builder.model.tree import Branch, Check, Result, Step, Tree
from builder.pages import addresses
from builder.pages.page import root_of
from builder.wording import phrases as words
from builder.wording.results import result_words

_SAID = {
    ExitKind.STILL_THERE: "still there",
    ExitKind.SPENT: "after its last try",
    ExitKind.COULD_NOT: "could not be done",
    ExitKind.NEXT: "next on the list",
}


@dataclass(frozen=True, slots=True)
class Target:
    """The end of a way: a step of this tree, another tree, or plain words."""

    text: str
    href: str = ""
    number: int | None = None


@dataclass(frozen=True, slots=True)
class Row:
    """One result of a check: what was found, what it means, where it leads."""

    said: str
    target: Target
    means: str = ""
    marks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Caller:
    """A step that leads to another, and the result by which it does."""

    step: str
    number: int
    said: str


@dataclass(frozen=True, slots=True)
class Plan:
    """What a step needs to know of its tree to name where it leads."""

    tree: Tree
    library: Library
    numbers: Mapping[str, int]
    callers: Mapping[str, tuple[Caller, ...]]


def plan_of(tree: Tree, library: Library, numbers: Mapping[str, int]) -> Plan:
    """Gather the callers of every step."""
    callers: dict[str, list[Caller]] = {id_: [] for id_ in tree.steps}
    for route in routes(tree):
        if route.to is not None:
            said = route.label or _SAID.get(route.exit.kind, "")
            callers[route.to].append(Caller(route.source, numbers[route.source], said))
    ordered = {
        id_: tuple(sorted(found, key=lambda caller: caller.number))
        for id_, found in callers.items()
    }
    return Plan(tree, library, numbers, ordered)


def target(plan: Plan, step: Step, branch: Branch) -> Target:
    """Name the end of a branch."""
    if branch.back:
        return _back(plan, step)
    if branch.next_item:
        return _next(plan, step)
    if branch.tree:
        return _hand_over(plan, branch)
    found = plan.tree.steps.get(branch.step or "")
    if found is None:
        return Target(f"nowhere yet: {branch.text}")
    return Target(found.text, f"#{addresses.step(found.id)}", plan.numbers[found.id])


def _back(plan: Plan, step: Step) -> Target:
    numbers = sorted({caller.number for caller in plan.callers[step.id]})
    if len(numbers) == 1:
        (only,) = {caller.step for caller in plan.callers[step.id]}
        text = f"back to {plan.tree.steps[only].text}"
        return Target(text, f"#{addresses.step(only)}", numbers[0])
    return Target(f"back to the step that led here: {words.joined(map(str, numbers), 'or')}")


def _next(plan: Plan, step: Step) -> Target:
    looped = list_step(plan.tree, step)
    if looped is None:
        return Target("next on the list")
    each = plan.tree.steps[looped].each
    item = each[0] if each else "item"
    return Target(f"the next {item}", f"#{addresses.step(looped)}", plan.numbers[looped])


def _hand_over(plan: Plan, branch: Branch) -> Target:
    other = plan.library.trees.get(branch.tree or "")
    anchor = addresses.step(branch.step) if branch.step else ""
    address = addresses.link(addresses.tree(str(branch.tree)), anchor)
    href = root_of(addresses.tree(plan.tree.id)) + address if other else ""
    number = plan.library.entries.get(str(branch.text))
    step = f", step {number}" if number else ""
    return Target(f"go on in the tree “{other.title if other else branch.tree}”{step}", href)


def result_ways(plan: Plan, step: Step, check: Check) -> tuple[Row, ...]:
    """List the results of a check, in the order of the file."""
    return tuple(
        Row(
            said=result_words(check, result),
            target=target(plan, step, result.branch),
            means=str(result.means or ""),
            marks=tuple(_marks(result)),
        )
        for result in check.results
    )


def _marks(result: Result) -> list[str]:
    marks = ["done"] if result.done else []
    marks += [f"{name} is {value}" for name, value in result.with_.items()]
    if result.weight is not None:
        marks.append(f"weight {words.number(result.weight)}")
    if result.chance is not None:
        marks.append(f"comes back in {round(result.chance * 100)} of 100")
    return marks
