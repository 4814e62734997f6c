"""What was done when a walk leaves a step, and what that does to a requirement.

In: a step and one of its exits. Out: its deeds, and their `Effect`. A step that runs a procedure
has done what the procedure has done by the word that it returns.
"""

from collections.abc import Iterable, Iterator
from enum import Enum

from builder.graph.requirements import Requirement
from builder.graph.routes import Exit, ExitKind
from builder.model.checks import Check
from builder.model.tree import Deed, ProcedureRun, Step


class Effect(Enum):
    """What leaving a step does to a requirement."""

    MET = "met"
    UNDONE = "undone"
    KEPT = "kept"  # it holds if it held before


def leaves_done(step: Step, exit_: Exit) -> bool:
    """Whether an exit leaves a step with its work done.

    That takes a result marked `done`, or any result where none is marked. A step that is used up
    was left before; a step that could not be done is not done.
    """
    if exit_.kind is ExitKind.CANNOT_TEST:
        return False
    marked = isinstance(step.body, Check) and any(result.done for result in step.body.results)
    return not marked or bool(exit_.result and exit_.result.done)


def deeds_done(step: Step, exit_: Exit) -> tuple[Deed, ...]:
    """Return what is certainly done when a walk leaves a step by an exit.

    After a procedure, what may have been undone is in it too: `release-supply`.
    """
    if step.run:
        return _of_run(step.run, exit_)
    return step.does if leaves_done(step, exit_) else ()


def _of_run(run: ProcedureRun, exit_: Exit) -> tuple[Deed, ...]:
    """A procedure that is used up was left before, by one of its words."""
    if exit_.result:
        outcome = run.outcomes.get(str(exit_.result.text))
        return outcome.does if outcome else ()
    if exit_.kind is ExitKind.SPENT:
        first, *others = [outcome.does for outcome in run.outcomes.values()] or [()]
        return tuple(deed for deed in first if all(deed in does for does in others))
    return ()


def effect(step: Step, exit_: Exit, requirement: Requirement) -> Effect:
    """Return what leaving a step by an exit does to a requirement."""
    if not step.does and step.run is None:
        return Effect.KEPT
    if is_met_after(deeds_done(step, exit_), requirement, False):
        return Effect.MET
    begun = step.does if step.run is None else step.run.may_do
    if step.run and exit_.result:
        begun = deeds_done(step, exit_)
    return Effect.KEPT if is_met_after(begun, requirement, True) else Effect.UNDONE


def is_met_after(deeds: Iterable[Deed], requirement: Requirement, before: bool) -> bool:
    """Whether a requirement is met after some deeds, in their order."""
    for deed in deeds:
        if deed.verb in requirement.undone_by:
            before = False
        elif requirement.is_met_by(deed):
            before = True
    return before


def unmet_deeds(step: Step, requirement: Requirement) -> Iterator[Deed]:
    """Yield what a step does before its own list, or its procedure, has met the requirement."""
    if step.run:
        yield from step.run.unmet.get(requirement.name, ())
    for place, deed in enumerate(step.does):
        if deed.verb in requirement.needed_by and not is_met_after(
            step.does[:place], requirement, False
        ):
            yield deed


def all_deeds(step: Step) -> tuple[Deed, ...]:
    """Return what a step, or its procedure, may do."""
    return (*step.does, *step.run.may_do) if step.run else step.does
