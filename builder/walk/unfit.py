"""Whether an event fits the walk as it is.

In: the tables, a state, an event. Out: a `Refused` that says what comes first, or None.
"""

from builder.walk.events import (
    Acknowledge,
    Answer,
    CannotTest,
    Done,
    Event,
    Fill,
    HandOver,
    NoneOfThese,
    Pause,
    Rejoin,
    Resume,
    RunProcedure,
    Start,
    TakeEarlier,
    Tick,
    Verified,
    WriteUp,
)
from builder.walk.job_state import JobState, Refused, is_over, judges_in_words
from builder.walk.to_fill import asks_at, unanswered
from builder.walk.told import hazards_at, plan_of, proved_elsewhere, row_of, unread
from builder.walk.walk_tables import WalkTables

_INSTEAD = {
    "check": "this is a check: answer it",
    "action": "this is an action: mark it as done",
    "fix": "this is a fix: mark it as done",
}


def unfit(tables: WalkTables, state: JobState, event: Event) -> Refused | None:
    """Return why an event can't be now."""
    reason = _of_the_job(tables, state, event)
    if not reason and not isinstance(event, Start | Resume):
        reason = _of_the_step(tables, state, event)
    return Refused(reason) if reason else None


def _of_the_job(tables: WalkTables, state: JobState, event: Event) -> str:
    if isinstance(event, Start):
        return _start(tables, state, event)
    if not state.tree:
        return "the job hasn't begun: start it first"
    if bool(state.paused) != isinstance(event, Resume):
        return "resume the job first" if state.paused else "the job isn't paused"
    return ""


def _start(tables: WalkTables, state: JobState, event: Start) -> str:
    if state.tree:
        return "the job has begun already"
    if event.tree not in tables.trees:
        return f"there is no tree `{event.tree}`"
    steps = tables.trees[event.tree]["steps"]
    unknown = [one for one in (event.enter, *event.proven) if one and one not in steps]
    if unknown:
        return f"the tree `{event.tree}` has no step `{unknown[0]}`"
    if event.vehicle and event.vehicle not in tables.shop["vehicles"]:
        return f"the shop has no vehicle `{event.vehicle}`"
    return ""


def _of_the_step(tables: WalkTables, state: JobState, event: Event) -> str:
    frame = state.frames[-1]
    step = getattr(event, "step", "")
    if step not in ("", frame.step, frame.place):
        return f"the walk is at `{frame.place}`, not at `{step}`"
    if isinstance(event, Pause | HandOver | Tick | Acknowledge):
        return ""
    if isinstance(event, WriteUp):
        return "" if state.end else "what the papers say is written at an end"
    if isinstance(event, Rejoin):
        is_verified = state.end and state.end.kind == "fix" and state.end.verified is not None
        return "" if is_verified and state.left else "there is no tree to go back to"
    if isinstance(event, Fill):
        names = [row["name"] for row in asks_at(tables, state)]
        return "" if event.name in names else f"the walk doesn't ask for `{event.name}` now"
    if (missing := unanswered(tables, state)) and not _has_no_spec(tables, state, event):
        return f"fill in first: {missing}"
    return _of_the_kind(tables, state, event)


def _has_no_spec(tables: WalkTables, state: JobState, event: Event) -> bool:
    """Whether a check is given up because nobody can look up its spec."""
    asks = asks_at(tables, state)
    return isinstance(event, CannotTest) and all("limits" in row for row in asks)


def _of_the_kind(tables: WalkTables, state: JobState, event: Event) -> str:
    row = row_of(tables, state.frames[-1])
    if isinstance(event, Verified):
        return "" if judges_in_words(state) else "there is no test after a repair to judge now"
    if is_over(state):
        return "the walk has ended: correct an answer, or go back"
    if judges_in_words(state):
        return "the repair is done: go through its tests"
    gives_up = isinstance(event, CannotTest | NoneOfThese) and row["kind"] != "fix"
    if not gives_up and isinstance(event, Done) != (row["kind"] in ("action", "fix")):
        return _INSTEAD[row["kind"]]
    if isinstance(event, RunProcedure | TakeEarlier) and "by" not in row:
        return "this check runs no procedure: answer it"
    if isinstance(event, TakeEarlier) and not proved_elsewhere(state, row):
        return "the procedure wasn't run earlier: run it"
    return _cautions(tables, state, event)


def _cautions(tables: WalkTables, state: JobState, event: Event) -> str:
    if not isinstance(event, Answer | Done) or (isinstance(event, Answer) and event.stated):
        return ""
    hazards = unread(tables, state, hazards_at(tables, state, plan_of(tables, state)))
    shorts = ", ".join(tables.shop["hazards"][one]["short"] for one in hazards)
    return f"read and acknowledge first: {shorts}" if hazards else ""
