"""One event on a walk that goes forward: everything but `back` and `correct`.

In: the tables, a state, an event. Out: the next state without its history, or a `Refused` where the
event doesn't fit.
"""

from dataclasses import replace

from builder.walk.at_step import leave_by, moved, seconds_between
from builder.walk.events import (
    Acknowledge,
    Back,
    Correct,
    Event,
    Fill,
    HandOver,
    Pause,
    Rejoin,
    Resume,
    Start,
    Tick,
    WriteUp,
)
from builder.walk.job_state import Acknowledged, JobState, RecordedStep, Refused, WalkFrame
from builder.walk.list_items import with_item
from builder.walk.targets import arrived, come_to
from builder.walk.to_fill import asks_at, checked
from builder.walk.told import plan_of, planned_lines
from builder.walk.told_hazards import hazards_at
from builder.walk.unfit import unfit
from builder.walk.walk_tables import WalkTables


def forward(tables: WalkTables, state: JobState, event: Event) -> JobState | Refused:
    """Return the state after an event."""
    if refusal := unfit(tables, state, event):
        return refusal
    match event:
        case Start():
            return _started(tables, state, event)
        case Fill():
            return _filled(tables, state, event)
        case Tick():
            return _ticked(tables, state, event)
        case WriteUp():
            return _written_up(state, event)
        case Acknowledge():
            return _acknowledged(tables, state, event)
        case Pause() | HandOver() | Resume():
            return _interrupted(state, event)
        case Rejoin():
            return _rejoined(tables, state, event)
        case Back() | Correct():
            raise TypeError("back and correct are for `reduce_event`")
        case _:
            return leave_by(tables, state, event)


def _started(tables: WalkTables, state: JobState, event: Start) -> JobState | Refused:
    table = tables.trees[event.tree]
    frame = WalkFrame(event.tree, "")
    proven = (
        RecordedStep(event.tree, step, table["steps"][step]["kind"], result, stated=True)
        for step, result in event.proven.items()
    )
    begun = replace(
        state,
        tree=event.tree,
        revision=table["revision"],
        vehicle=event.vehicle,
        complaint=event.complaint,
        frames=(frame,),
        steps=tuple(proven),
        since=event.at,
    )
    return come_to(tables, begun, event.enter or table["start"])


def _filled(tables: WalkTables, state: JobState, event: Fill) -> JobState | Refused:
    ask = next(one for one in asks_at(tables, state) if one["name"] == event.name)
    value = checked(ask, event.value)
    if isinstance(value, Refused):
        return value
    frame, sources = state.frames[-1], {**state.sources, event.name: event.source}
    if event.name in tables[frame.inside].get("asks", {}) and isinstance(value, str):
        answers = {**frame.filled, event.name: value}
        return replace(state, frames=(*state.frames[:-1], replace(frame, filled=answers)))
    filled = {**state.filled, event.name: value}
    return with_item(tables, replace(state, filled=filled, sources=sources))


def _ticked(tables: WalkTables, state: JobState, event: Tick) -> JobState | Refused:
    lines = planned_lines(tables, state, plan_of(tables, state))
    if not 0 <= event.line < len(lines):
        return Refused(f"there is no line {event.line}: this step has {len(lines)}, from 0")
    changed = state.ticked | {event.line} if event.on else state.ticked - {event.line}
    return replace(state, ticked=changed)


def _written_up(state: JobState, event: WriteUp) -> JobState:
    assert state.end is not None
    place = f"{state.end.inside}#{state.end.step}"
    own = {**state.write_up.get(place, {}), event.name: event.text}
    written = {name: text for name, text in own.items() if text}
    return replace(state, write_up={**state.write_up, place: written})


def _acknowledged(tables: WalkTables, state: JobState, event: Acknowledge) -> JobState | Refused:
    there = hazards_at(tables, state, plan_of(tables, state))
    for hazard in event.hazards:
        if hazard not in there:
            return Refused(f"`{hazard}` is no hazard of this step")
    place = state.frames[-1].place
    entries = (Acknowledged(one, place, event.who, event.at) for one in event.hazards)
    return replace(
        state,
        read=state.read | frozenset(event.hazards),
        acknowledged=(*state.acknowledged, *entries),
    )


def _interrupted(state: JobState, event: Pause | HandOver | Resume) -> JobState:
    match event:
        case Pause() | HandOver():
            worked = state.worked + (seconds_between(state.since, event.at) or 0)
            paused = "pause" if isinstance(event, Pause) else "hand_over"
            return replace(state, paused=paused, worked=worked)
        case Resume():
            return replace(state, paused="", since=event.at, known=frozenset(), read=frozenset())


def _rejoined(tables: WalkTables, state: JobState, event: Rejoin) -> JobState | Refused:
    """Go back to the step that handed off to this tree, from normal."""
    frame, *left = state.left
    there = replace(
        moved(state, event.at),
        frames=(frame,),
        left=tuple(left),
        end=None,
        to_normal=True,
        known=frozenset(),
        proved={},
    )
    return arrived(tables, there)
