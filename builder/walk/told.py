"""What is told at the step of a walk: the changes at the vehicle, and the cautions.

In: the tables, the state. Out: a `Plan` of changes; hazards, most severe first. The screen shows
them, the reducer takes over what then holds.
"""

from dataclasses import dataclass
from typing import cast

from builder.graph.runs import with_values
from builder.graph.state_changes import Changes, back_to_normal, changes
from builder.graph.step_entry import while_hooking_up
from builder.graph.vehicle_states import States, place_of
from builder.model.conditions import VehicleState
from builder.walk.job_state import JobState, WalkFrame, is_over
from builder.walk.shop_rows import FittingRow
from builder.walk.tree_rows import WalkStepRow
from builder.walk.walk_tables import WalkTables

_SEVERITY = ("DANGER", "WARNING", "CAUTION", "NOTICE")
_TO_ACKNOWLEDGE = ("DANGER", "WARNING")


@dataclass(frozen=True, slots=True)
class Plan:
    """What changes before the lines of a step and, to hook up with the key off, after them."""

    first: Changes
    after: Changes
    states: States  # that hold then


def row_of(tables: WalkTables, frame: WalkFrame) -> WalkStepRow:
    """Return the step where a frame is; a fix with how its module is fitted."""
    row = tables[frame.inside]["steps"][frame.step]
    fit = tables.shop["modules"].get(with_values(row.get("replaces", ""), frame.filled))
    return _fitted(tables, row, fit) if fit else row


def _fitted(tables: WalkTables, row: WalkStepRow, fit: FittingRow) -> WalkStepRow:
    """Add how a module is fitted; of its states those of which the step names no other."""
    own = row.get("needs", [])
    places = {place_of(tables.conditions, VehicleState(*state)) for state in own}
    inherited = [
        state
        for state in fit.get("needs", ())
        if place_of(tables.conditions, VehicleState(*state)) not in places
    ]
    more = {
        "needs": [*own, *inherited],
        "do": [*fit.get("do", ()), *row.get("do", ())],
        "when": [*row.get("when", ()), *fit.get("when", ())],
        "hazards": [*row.get("hazards", ()), *fit.get("hazards", ())],
        "torques": [*dict.fromkeys((*row.get("torques", ()), *fit.get("torques", ())))],
    }
    return cast("WalkStepRow", {**row, **{key: value for key, value in more.items() if value}})


def run_key(row: WalkStepRow, frame: WalkFrame) -> str:
    """Return the procedure of a check with what fills it, as one text."""
    takes = sorted(row["by"]["takes"].items())
    filled = (f"{name}={with_values(value, frame.filled)}" for name, value in takes)
    return " ".join((row["by"]["procedure"], *filled))


def proved_elsewhere(state: JobState, row: WalkStepRow) -> tuple[str, str] | None:
    """Return the word that the procedure of another check proved earlier, and that check."""
    frame = state.frames[-1]
    proof = state.proved.get(run_key(row, frame))
    return proof if proof and proof[1] != frame.place else None


def plan_of(tables: WalkTables, state: JobState) -> Plan:
    """Return what changes at the step of a walk; at an end all goes back to normal."""
    conditions, frame = tables.conditions, state.frames[-1]
    row = row_of(tables, frame)
    if is_over(state):
        first, now = back_to_normal(conditions, state.now)
        return Plan(first, (), now)
    first, now = back_to_normal(conditions, state.now) if state.to_normal else ((), state.now)
    needs = needed(row, frame)
    if "hook_up" not in row:
        more, now = changes(conditions, now, needs)
        return Plan((*first, *more), (), now)
    hook_up = VehicleState(row["hook_up"])
    more, now = changes(conditions, now, while_hooking_up(conditions, needs, hook_up))
    after, now = changes(conditions, now, needs)
    return Plan((*first, *more), after, now)


def needed(row: WalkStepRow, frame: WalkFrame) -> States:
    """Return the states that a step needs, with their parts filled in."""
    return tuple(
        VehicleState(condition, with_values(part, frame.filled), with_values(value, frame.filled))
        for condition, part, value in row.get("needs", ())
    )


def hazards_at(tables: WalkTables, state: JobState, plan: Plan) -> tuple[str, ...]:
    """Return the hazards of the changes, of the states that hold and of the step itself."""
    told = [hazard for change in (*plan.first, *plan.after) for hazard in change.hazards]
    held = [one for held in plan.states for one in tables.conditions[held.condition].hazards]
    own = row_of(tables, state.frames[-1]).get("hazards", [])
    ids = dict.fromkeys(str(one) for one in (*told, *held, *own))
    known = tables.shop["hazards"]
    ranked = [one for one in ids if one in known]
    return tuple(sorted(ranked, key=lambda one: _SEVERITY.index(known[one]["signal"])))


def in_full(tables: WalkTables, state: JobState, hazard: str) -> bool:
    """Whether a hazard is shown in full: the first time since a break; a DANGER always."""
    signal = tables.shop["hazards"][hazard]["signal"]
    return signal == "DANGER" or hazard not in state.known


def unread(tables: WalkTables, state: JobState, hazards: tuple[str, ...]) -> tuple[str, ...]:
    """Return the hazards to acknowledge before the step is answered or done."""
    return tuple(
        one
        for one in hazards
        if tables.shop["hazards"][one]["signal"] in _TO_ACKNOWLEDGE
        and in_full(tables, state, one)
        and one not in state.read
    )


def line_texts(tables: WalkTables, state: JobState, plan: Plan) -> tuple[tuple[str, str], ...]:
    """Return the lines to do at the step, each with what it belongs to."""
    row, frame = row_of(tables, state.frames[-1]), state.frames[-1]
    lines = [("change", text) for change in plan.first for text in change.told]
    if not is_over(state):
        lines += [("do", with_values(text, frame.filled)) for text in row.get("do", ())]
    lines += [("after", text) for change in plan.after for text in change.told]
    if state.end:
        lines += [("put back", text) for text in state.put_back]
    return tuple(lines)


def physical_states(tables: WalkTables, state: JobState) -> States:
    """Return the states of the vehicle as they are: changed if a line to change it is ticked."""
    if not state.ticked or not state.frames:
        return state.now
    plan = plan_of(tables, state)
    lines = line_texts(tables, state, plan)
    is_changed = any(
        lines[line][0] in ("change", "after") for line in state.ticked if line < len(lines)
    )
    return plan.states if is_changed else state.now
