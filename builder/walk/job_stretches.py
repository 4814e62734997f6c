"""A closed job cut into the stretches that it went through one tree each.

In: a `Case` that holds a walk. Out: its `Stretch`es. A stretch runs to a fix that was done, or to
the next tree; what a procedure measured belongs to the check that ran it, which comes after it.
"""

from dataclasses import dataclass

from builder.model.knowledge import Case, CaseStep
from builder.walk.case_of_walk import REPAIRED
from builder.walk.walk_tables import PROCEDURES


@dataclass(frozen=True, slots=True)
class Stretch:
    """The steps of a job in one tree, up to a fix or to another tree."""

    tree: str
    is_first: bool
    steps: tuple[CaseStep, ...]
    end: str  # `fix`, or `tree` of the next stretch
    end_step: str  # of the next tree; "" for a fix

    @property
    def own(self) -> tuple[str, ...]:
        """The steps of the tree itself."""
        return tuple(str(one.step) for one in self.steps if not is_inner(one))


def trees_of_case(case: Case) -> frozenset[str]:
    """Return the trees that a job went through."""
    inside = (str(one.inside) for one in case.path if one.inside and not is_inner(one))
    return frozenset((str(case.tree), *inside))


def is_inner(step: CaseStep) -> bool:
    """Whether a step is one of a procedure."""
    return str(step.inside or "").startswith(PROCEDURES)


def stretches_of(case: Case) -> list[Stretch]:
    """Cut a job where a fix was done and where another tree goes on."""
    parts: list[tuple[str, list[CaseStep]]] = []
    waiting: list[CaseStep] = []  # of a procedure, whose check comes after it
    for step in case.path:
        waiting.append(step)
        if is_inner(step):
            continue
        tree = str(step.inside or case.tree)
        if not parts or parts[-1][0] != tree or _is_fix(parts[-1][1][-1]):
            parts.append((tree, []))
        parts[-1][1].extend(waiting)
        waiting = []
    last = (str(case.fix_in or case.tree), str(case.fix or ""))
    return [
        _stretch(part, at == 0, parts[at + 1] if at + 1 < len(parts) else None, last)
        for at, part in enumerate(parts)
    ]


def _is_fix(step: CaseStep) -> bool:
    return step.result == REPAIRED


def _stretch(
    part: tuple[str, list[CaseStep]],
    is_first: bool,
    following: tuple[str, list[CaseStep]] | None,
    last: tuple[str, str],
) -> Stretch:
    tree, steps = part
    if _is_fix(steps[-1]):
        return Stretch(tree, is_first, tuple(steps[:-1]), str(steps[-1].step), "")
    if following is None and tree == last[0]:
        return Stretch(tree, is_first, tuple(steps), last[1], "")
    if following is None:
        return Stretch(tree, is_first, tuple(steps), last[0], last[1])
    first = next(str(one.step) for one in following[1] if not is_inner(one))
    return Stretch(tree, is_first, tuple(steps), following[0], first)
