"""Whether the changes for a step may be made, one after another, and of a fix those back to normal.

In: the shop's conditions, the states that held, and how a step is entered. Out: the first state
that is changed in a power state in which it may not be, or beside one that excludes it; the planner
finds an order without one wherever there is any.
"""

from builder.graph.state_changes import Changes
from builder.graph.step_entry import StepEntry
from builder.graph.vehicle_states import States, holds, in_the_way, power_state
from builder.model.conditions import Conditions, VehicleState


def first_impossible(conditions: Conditions, now: States, entry: StepEntry) -> VehicleState | None:
    """Return the first state that can't be changed when it is, or that is needed and isn't met."""
    missing = (state for state in entry.needed if not holds(conditions, entry.states, state))
    bad = _first_bad(conditions, now, entry.changed)
    return bad or next(missing, None) or _first_bad(conditions, entry.states, entry.back)


def _first_bad(conditions: Conditions, now: States, made: Changes) -> VehicleState | None:
    for change in made:
        power = power_state(conditions, now)
        ends = [state for state in (change.entered, change.left) if state]
        now = _after(conditions, now, change.left, change.entered)
        for state in ends:
            listed = conditions[state.condition].changed_with
            if listed and power and power.condition not in listed:
                return state
        if change.entered and in_the_way(conditions, now, change.entered):
            return change.entered
    return None


def _after(
    conditions: Conditions, now: States, left: VehicleState | None, entered: VehicleState | None
) -> States:
    kept = tuple(state for state in now if state != left)
    stays = entered and not conditions[entered.condition].normal
    return (*kept, entered) if entered and stays else kept
