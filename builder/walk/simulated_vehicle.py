"""A vehicle with a hidden fault, to practice on.

In: the tables, an end of a tree as the fault, random numbers. Out: how each step of a walk turns
out, as a `Choice`. What was shown once at a visit to a step stays.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from random import Random

from builder.walk.events import Answer
from builder.walk.job_state import JobState
from builder.walk.shortest_way import Choice, way_to
from builder.walk.walk_tables import WalkTables

STUCK_OR_FIX = ("stuck", "fix")


@dataclass
class SimulatedVehicle:
    """The fault, and what was shown so far."""

    tables: WalkTables
    tree: str
    fault: str  # ID of the fix or stop
    random: Random
    shown: dict[str, Choice] = field(default_factory=dict)  # by visit
    answers: dict[str, Answer] = field(default_factory=dict)  # with readings, by visit

    def choice_at(self, state: JobState) -> Choice:
        """Return how the step of a walk turns out."""
        key = visit_of(state)
        if key not in self.shown:
            ways = (way_to(self.tables, state, goal) for goal in self._goals(state))
            way = next((way for way in ways if way), (Choice("cannot test"),))
            self.shown[key] = way[0]
        return self.shown[key]

    def _goals(self, state: JobState) -> list[Callable[[JobState], bool]]:
        """Return the ends to lead to: the fault, and where no way leads there any other.

        The right repair passes its tests.
        """
        if state.end:
            return [
                lambda one: one.end is not None and one.end.verified is True,
                lambda one: one.end is not None and one.end.verified is not None,
            ]
        return [
            self.is_at_fault,
            lambda one: one.end is not None and one.end.kind not in STUCK_OR_FIX,
            lambda one: one.end is not None,
        ]

    def is_at_fault(self, state: JobState) -> bool:
        """Whether a walk has ended at the fault."""
        end = state.end
        is_named = end is not None and end.kind != "stuck" and end.step == self.fault
        return is_named and end is not None and end.inside == self.tree


def visit_of(state: JobState) -> str:
    """Return a name for this visit to a step, in this run of a procedure."""
    frame = state.frames[-1]
    outside = [f"{one.place} {one.counts.get(one.step, 0)}" for one in state.frames]
    return " > ".join((*outside, str(frame.items.get(frame.step, 0)), str(state.verifying)))
