"""The steps of a walk with all that held when they were answered.

In: the tables, a state. Out: for each recorded step a `StepTaken`: its frame, with what fills its
words, and the state before it.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from builder.walk.job_state import JobState, RecordedStep, WalkFrame
from builder.walk.reduce import held_states
from builder.walk.walk_tables import WalkTables


@dataclass(frozen=True, slots=True)
class StepTaken:
    """A recorded step; `before` is the state in which it was answered, with its frame on top.

    `verifies` says whether it belongs to a test after a repair.
    """

    entry: RecordedStep
    frame: WalkFrame
    before: JobState
    verifies: bool


def steps_taken(tables: WalkTables, state: JobState) -> tuple[StepTaken, ...]:
    """Return the steps that hold, in their order."""
    return tuple(_taken(tables, state))


def _taken(tables: WalkTables, state: JobState) -> Iterator[StepTaken]:
    for before, after in held_states(tables, state):
        for entry in after.steps[len(before.steps) :]:
            frame = _frame_of(before, entry)
            here = replace(before, vehicle=after.vehicle, frames=(frame,))
            verifies = entry.kind == "verify" or any(one.verifies for one in before.frames)
            yield StepTaken(entry, frame, here, verifies)


def _frame_of(before: JobState, entry: RecordedStep) -> WalkFrame:
    """Return the frame of a step: the top one, or that of a check whose procedure returned."""
    there = (one for one in reversed(before.frames) if (one.inside, one.step) == _place(entry))
    return next(there, WalkFrame(entry.inside, entry.step))


def _place(entry: RecordedStep) -> tuple[str, str]:
    return entry.inside, entry.step
