"""A record played again: the proof that it is a walk of the tree as it stands.

In: the tables, a record that has passed its schema. Out: the state in which the walk ended, or a
`Refused`: the tree is another one, or was changed since, or the steps don't follow from the events.
"""

from collections.abc import Mapping
from typing import Any

from builder.walk.event_files import event_from
from builder.walk.events import Start
from builder.walk.job_state import JobState, Refused
from builder.walk.record import record_of
from builder.walk.reduce import replay
from builder.walk.walk_tables import WalkTables

_PROVED = ("tree", "vehicle", "complaint", "steps", "end")


def played_record(tables: WalkTables, record: Mapping[str, Any]) -> JobState | Refused:
    """Return the state that a record leads to."""
    tree = record["tree"]
    if tree not in tables.trees:
        return Refused(f"there is no tree `{tree}`: the record is of another shop, or it was moved")
    if record["revision"] != tables.trees[tree]["revision"]:
        return Refused(
            f"`{tree}` was changed since this walk: its record is of revision "
            f"{record['revision'] or 'unknown'}, the tree is {tables.trees[tree]['revision']}. "
            "Check out that revision, or walk it again"
        )
    events = [event_from(row) for row in record.get("events", ())]
    refused = next((event for event in events if isinstance(event, Refused)), None)
    if refused:
        return refused
    good = [event for event in events if not isinstance(event, Refused)]
    if not good or not isinstance(good[0], Start):
        return Refused("the record has no events: save it again at the end of the walk")
    if good[0].tree != tree:
        return Refused(f"the record is of `{tree}`, but its events start in `{good[0].tree}`")
    state = replay(tables, good)
    return state if isinstance(state, Refused) else _as_recorded(state, record)


def _as_recorded(state: JobState, record: Mapping[str, Any]) -> JobState | Refused:
    """Return the state if the record says the same: no step was put in or left out by hand."""
    again = record_of(state)
    different = [key for key in _PROVED if again[key] != record[key]]
    if not different:
        return state
    if different == ["steps"]:
        pairs = zip(again["steps"], record["steps"], strict=False)
        at = next((at for at, pair in enumerate(pairs) if pair[0] != pair[1]), None)
        where = "their number" if at is None else f"step {at + 1}"
        return Refused(f"the steps of the record don't follow from its events: {where}")
    return Refused(f"the record doesn't follow from its events: {', '.join(different)}")
