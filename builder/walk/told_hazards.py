"""The cautions at the step of a walk, and which of them are to be acknowledged.

In: the tables, the state, the plan of its changes. Out: hazards by ID, most severe first.
"""

from builder.walk.job_state import JobState, judges_in_words
from builder.walk.told import Plan, row_of
from builder.walk.walk_tables import WalkTables

_SEVERITY = ("DANGER", "WARNING", "CAUTION", "NOTICE")
_TO_ACKNOWLEDGE = ("DANGER", "WARNING")


def hazards_at(tables: WalkTables, state: JobState, plan: Plan) -> tuple[str, ...]:
    """Return the hazards of the changes, of the states that hold and of the step itself."""
    told = [hazard for change in plan.every for hazard in change.hazards]
    held = [one for held in plan.states for one in tables.conditions[held.condition].hazards]
    row = row_of(tables, state.frames[-1])
    own = [] if judges_in_words(state) else row.get("hazards", [])
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
