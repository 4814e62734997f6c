"""Walks written as what is typed at the terminal, so that a test reads like a job.

In: tables, a tree, lines. Out: the state, and what is shown then. A caution that has to be read is
acknowledged by itself; a refusal fails the test.
"""

from typing import Any

from builder.walk.events import Event, Start
from builder.walk.job_state import JobState, Refused
from builder.walk.reduce import reduce_event
from builder.walk.screen import screen
from builder.walk.typed_line import event_of_line
from builder.walk.walk_tables import WalkTables


def started(tables: WalkTables, tree: str, vehicle: str = "", enter: str = "") -> JobState:
    """Return a walk that has begun."""
    return after(tables, JobState(), Start(tree=tree, vehicle=vehicle, enter=enter))


def after(tables: WalkTables, state: JobState, *events: Event) -> JobState:
    """Return the state after events that fit."""
    for event in events:
        following = reduce_event(tables, state, event)
        assert isinstance(following, JobState), following.message
        state = following
    return state


def typed(tables: WalkTables, state: JobState, *lines: str) -> JobState:
    """Return the state after lines that fit."""
    for line in lines:
        while "unread" in screen(tables, state) and line not in ("back", "read"):
            state = after(tables, state, _event(tables, state, "read"))
        state = after(tables, state, _event(tables, state, line))
    return state


def refused(tables: WalkTables, state: JobState, line: str) -> str:
    """Return the message of a line that doesn't fit."""
    event = event_of_line(line, screen(tables, state), "")
    following = event if isinstance(event, Refused) else reduce_event(tables, state, event)
    assert isinstance(following, Refused), following
    return following.message


def place(state: JobState) -> str:
    """Return where a walk is: the procedure or tree, and the step."""
    return state.frames[-1].place


def lines_told(shown: dict[str, Any], of: str) -> list[str]:
    """Return the lines to do of one kind."""
    return [line["text"] for line in shown.get("lines", ()) if line["of"] == of]


def _event(tables: WalkTables, state: JobState, line: str) -> Event:
    event = event_of_line(line, screen(tables, state), "")
    assert not isinstance(event, Refused), event.message
    return event
