"""How a step is left: answered, done, not possible, a procedure run, a test judged.

In: the tables, a state at a step, an event that fits it. Out: the next state, or a `Refused`. What
was done is recorded, and the states that the step needs hold from then on.
"""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime

from builder.walk.answered import answered
from builder.walk.events import (
    Answer,
    CannotTest,
    Done,
    Event,
    NoneOfThese,
    RunProcedure,
    TakeEarlier,
    Verified,
)
from builder.walk.job_state import (
    CANNOT_TEST,
    NONE_OF_THESE,
    JobState,
    RecordedStep,
    Refused,
    is_repairing,
    judges_in_words,
    stuck,
)
from builder.walk.rows import ToolRow
from builder.walk.spec_ranges import with_ranges
from builder.walk.targets import (
    cannot_test,
    into_procedure,
    judge_test,
    leave,
    verify_next,
    with_result,
)
from builder.walk.told import (
    Plan,
    own_put_back,
    physical_states,
    plan_of,
    row_of,
    run_key,
)
from builder.walk.told_hazards import hazards_at
from builder.walk.tree_rows import WalkStepRow
from builder.walk.walk_tables import WalkTables

DONE = "done"
StepEvent = Answer | Done | CannotTest | NoneOfThese | RunProcedure | TakeEarlier | Verified


def leave_by(tables: WalkTables, state: JobState, event: StepEvent) -> JobState | Refused:
    """Return the state after an event at the step."""
    match event:
        case Answer():
            return _answered(tables, state, event)
        case Done():
            return _done(tables, state, event)
        case CannotTest():
            entry = _entry(tables, state, event, CANNOT_TEST)
            return cannot_test(tables, _left(tables, state, entry))
        case NoneOfThese():
            return stuck(_left(tables, state, _entry(tables, state, event, NONE_OF_THESE)))
        case RunProcedure():
            row = row_of(tables, state.frames[-1])
            return into_procedure(tables, moved(state, event.at), row)
        case TakeEarlier():
            frame, row = state.frames[-1], row_of(tables, state.frames[-1])
            word, place = state.proved[run_key(row, frame)]
            return with_result(tables, moved(state, event.at), word, earlier=place)
        case Verified(passed=passed):
            here = _worked(tables, state, plan_of(tables, state))
            return judge_test(tables, moved(here, event.at), passed)


def _answered(tables: WalkTables, state: JobState, event: Answer) -> JobState | Refused:
    row = with_ranges(tables, state, row_of(tables, state.frames[-1]))
    answer = answered(row, tools_of_row(tables, row), event)
    if isinstance(answer, Refused):
        return answer
    result = row["results"][answer.result]
    entry = replace(
        _entry(tables, state, event, result["text"]),
        means=result.get("means", ""),
        readings=answer.readings,
        too_close=answer.too_close,
        stated=event.stated,
        wrote=event.wrote,
    )
    left = _stated(tables, state, entry) if event.stated else _left(tables, state, entry)
    return leave(tables, left, result["text"], result["to"], result.get("answers"))


def tools_of_row(tables: WalkTables, row: WalkStepRow) -> Sequence[ToolRow]:
    """Return the tools of a step that read something."""
    tools = tables.shop["tools"]
    return [tools[id_] for id_ in row.get("tools", ()) if id_ in tools]


def _done(tables: WalkTables, state: JobState, event: Done) -> JobState | Refused:
    row = row_of(tables, state.frames[-1])
    entry = replace(_entry(tables, state, event, DONE), wrote=event.wrote)
    left = _left(tables, state, entry)
    if row["kind"] == "fix":
        return verify_next(tables, left, 0)
    return leave(tables, left, DONE, row.get("then", ""))


def _entry(tables: WalkTables, state: JobState, event: Event, result: str) -> RecordedStep:
    frame, row = state.frames[-1], row_of(tables, state.frames[-1])
    seconds = seconds_between(state.since, event.at)
    return RecordedStep(
        frame.inside,
        frame.step,
        row["kind"],
        result,
        item=frame.filled.get(row["each"][0], "") if "each" in row else "",
        seen=event.seen if isinstance(event, CannotTest | NoneOfThese) else "",
        at=event.at,
        who=event.who,
        minutes=None if seconds is None else (state.worked + seconds + 30) // 60,
        event=len(state.done),
    )


def _left(tables: WalkTables, state: JobState, entry: RecordedStep) -> JobState:
    """Record a step that was done, also where it couldn't be tested."""
    here = _worked(tables, state, plan_of(tables, state))
    return replace(moved(here, entry.at), steps=(*state.steps, entry))


def _worked(tables: WalkTables, state: JobState, plan: Plan) -> JobState:
    """Return the state with the vehicle as the step leaves it; of a fix with all put back."""
    is_put_back = is_repairing(state) or judges_in_words(state)
    own = () if is_put_back else own_put_back(tables, state.frames[-1])
    before = () if is_put_back or plan.put_back else state.put_back
    return replace(
        state,
        now=plan.states_left,
        to_normal=False,
        known=state.known | frozenset(hazards_at(tables, state, plan)),
        put_back=tuple(dict.fromkeys((*before, *own))),
    )


def _stated(tables: WalkTables, state: JobState, entry: RecordedStep) -> JobState:
    """Record a step that was known before: nothing was done for it, but for what is ticked."""
    now = physical_states(tables, state)
    is_changed = now != state.now
    return replace(
        moved(state, entry.at),
        steps=(*state.steps, entry),
        now=now,
        to_normal=state.to_normal and not is_changed,
    )


def moved(state: JobState, at: str) -> JobState:
    """Return the state on its way to another step, since a time."""
    return replace(state, read=frozenset(), ticked=frozenset(), passed=(), since=at, worked=0)


def seconds_between(start: str, end: str) -> int | None:
    """Return the seconds from one time to another, none below zero; None without both."""
    if not start or not end:
        return None
    return max(
        0, int((datetime.fromisoformat(end) - datetime.fromisoformat(start)).total_seconds())
    )
