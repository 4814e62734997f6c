"""The reducer of a walk: state and event to the next state.

In: `WalkTables`, a `JobState`, an event. Out: the next state, or a `Refused` that changes nothing.
"""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from builder.walk.events import Answer, Back, Correct, Event
from builder.walk.forward import forward
from builder.walk.job_state import JobState, Refused, VehicleAsIs
from builder.walk.told import physical_states
from builder.walk.walk_tables import WalkTables


def reduce_event(tables: WalkTables, state: JobState, event: Event) -> JobState | Refused:
    """Return the state after an event."""
    match event:
        case Back():
            return _undone(state, event)
        case Correct():
            return _corrected(tables, state, event)
        case _:
            following = _one_more(tables, state, event)
            if isinstance(following, Refused):
                return following
            return replace(following, events=(*state.events, event), before=state)


def replay(tables: WalkTables, events: Iterable[Event]) -> JobState | Refused:
    """Return the state after all events, or the first refusal, with the number of its event."""
    state = JobState()
    for number, event in enumerate(events, 1):
        following = reduce_event(tables, state, event)
        if isinstance(following, Refused):
            return Refused(f"event {number}: {following.message}")
        state = following
    return state


def held_states(tables: WalkTables, state: JobState) -> Iterator[tuple[JobState, JobState]]:
    """Yield the state before and after each event that holds; corrected ones are played anew."""
    before = JobState()
    for event in state.done:
        following = _one_more(tables, before, event)
        if isinstance(following, Refused):
            return
        yield before, following
        before = following


def _one_more(
    tables: WalkTables, state: JobState, event: Event | VehicleAsIs
) -> JobState | Refused:
    if isinstance(event, VehicleAsIs):
        following: JobState | Refused = _as_it_is(state, event)
    else:
        following = forward(tables, state, event)
    if isinstance(following, Refused):
        return following
    return replace(following, done=(*state.done, event))


def _as_it_is(state: JobState, vehicle: VehicleAsIs) -> JobState:
    return replace(
        state,
        now=vehicle.now,
        known=vehicle.known,
        put_back=tuple(dict.fromkeys((*state.put_back, *vehicle.put_back))),
        since=vehicle.since,
        worked=0,
    )


def _undone(state: JobState, event: Back) -> JobState | Refused:
    """Return the state before the last event; what was measured since then is kept."""
    if state.before is None:
        return Refused("there is nothing to undo")
    before = state.before
    kept = (*before.steps, *before.struck)
    measured = (one for one in (*state.struck, *state.steps) if one.readings or one.wrote)
    lost = tuple(one for one in measured if one not in kept)
    return replace(before, events=(*state.events, event), struck=(*before.struck, *lost))


def _corrected(tables: WalkTables, state: JobState, event: Correct) -> JobState | Refused:
    """Play the events again with another answer, as far as they still fit."""
    if refusal := _not_correctable(state, event):
        return refusal
    at = state.steps[event.index].event
    again = _played(tables, (*state.done[:at], _other_answer(state, event)))
    if isinstance(again, Refused):
        return again
    for later in state.done[at + 1 :]:
        following = _one_more(tables, again, later)
        if isinstance(following, Refused):
            now = physical_states(tables, state)
            vehicle = VehicleAsIs(now, state.known, state.put_back, event.at)
            again = replace(_as_it_is(again, vehicle), done=(*again.done, vehicle))
            break
        again = following
    if again.steps == state.steps:
        return state
    struck = tuple(one for one in state.steps if one not in again.steps)
    return replace(
        again,
        struck=(*state.struck, *struck),
        acknowledged=state.acknowledged,
        events=(*state.events, event),
        before=state,
    )


def _other_answer(state: JobState, event: Correct) -> Answer:
    entry = state.steps[event.index]
    old = state.done[entry.event]
    assert not isinstance(old, VehicleAsIs)
    return Answer(
        step=f"{entry.inside}#{entry.step}",
        result=event.result,
        readings=event.readings,
        stated=event.stated,
        wrote=entry.wrote,
        at=old.at,
        who=old.who,
    )


def _played(tables: WalkTables, events: Iterable[Event | VehicleAsIs]) -> JobState | Refused:
    state = JobState()
    for event in events:
        following = _one_more(tables, state, event)
        if isinstance(following, Refused):
            return following
        state = following
    return state


def _not_correctable(state: JobState, event: Correct) -> Refused | None:
    if state.paused:
        return Refused("resume the job first")
    if not 0 <= event.index < len(state.steps):
        return Refused(f"there is no step {event.index}: the record has {len(state.steps)}, from 0")
    entry = state.steps[event.index]
    if entry.kind != "check" or entry.event < 0:
        return Refused("only the answer of a check can be corrected")
    return None
