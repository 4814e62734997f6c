"""What a procedure measured for the check that ran it.

In: the steps of a walk before the repair, the check. Out: the checks of its run, in their order. A
check whose answer was proved earlier, or only stated, has none.
"""

from collections.abc import Sequence

from builder.walk.steps_taken import StepTaken
from builder.walk.walk_tables import PROCEDURES


def checks_of_run(before: Sequence[StepTaken], check: StepTaken) -> tuple[StepTaken, ...]:
    """Return the answered checks that led to the word of a procedure."""
    if check.entry.inside.startswith(PROCEDURES) or check.entry.earlier or check.entry.stated:
        return ()
    at = next(at for at, one in enumerate(before) if one is check)
    run: list[StepTaken] = []
    for one in reversed(before[:at]):
        if not one.entry.inside.startswith(PROCEDURES):
            break
        run.append(one)
    return tuple(one for one in reversed(run) if one.entry.kind == "check")
