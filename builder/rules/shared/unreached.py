"""Steps that a walk never reaches, and the dead ends that most likely should lead to them.

In: the `Facts` of a tree. Out: names of steps, in the order of the file.
"""

from collections.abc import Iterator

from builder.model.checks import Check
from builder.model.tree import Action, Step
from builder.rules.shared.rule import Facts


def dead_ends(facts: Facts) -> Iterator[Step]:
    """Yield every action without a next step, and every check without results."""
    for step in facts.steps:
        match step.body:
            case Action(then=None) | Check(results=()):
                yield step


def first_unreached(facts: Facts) -> list[str]:
    """Return the unreached steps from which all the other unreached ones follow."""
    ways: dict[str, set[str]] = {
        str(step.id): set() for step in facts.steps if step.id not in facts.graph.reachable
    }
    for step, exit_ in facts.exits if ways else ():
        to = exit_.branch.step
        if step.id in ways and to in ways and to != step.id and not exit_.branch.tree:
            ways[str(step.id)].add(str(to))
    led_to = {other for others in ways.values() for other in others}
    first, covered = [], set()
    for name in (*(name for name in ways if name not in led_to), *ways):
        if name not in covered:
            first.append(name)
            covered |= _reached_from(name, ways)
    return [name for name in ways if name in first]


def _reached_from(name: str, ways: dict[str, set[str]]) -> set[str]:
    reached, stack = set(), [name]
    while stack:
        if (at := stack.pop()) not in reached:
            reached.add(at)
            stack += ways[at]
    return reached
