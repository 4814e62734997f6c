"""The shortest way from where a walk is to an end, whatever has to be seen on it.

In: the tables, a state, the goal. Out: the moves in their order, or None where no way leads there.
The simulated vehicle answers so that the walk takes it.
"""

from collections import deque
from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import NamedTuple

from builder.walk.job_state import JobState, Refused
from builder.walk.targets import cannot_test, into_procedure, judge_test, leave, verify_next
from builder.walk.told import row_of
from builder.walk.walk_tables import WalkTables

MOST_STATES = 20_000  # looked at before it is given up


class Choice(NamedTuple):
    """How a step is left: by a result, done, run, passed, or because it can't be tested."""

    kind: str
    result: int = -1


Goal = Callable[[JobState], bool]


def way_to(tables: WalkTables, state: JobState, is_goal: Goal) -> tuple[Choice, ...] | None:
    """Return the fewest choices that lead to the goal without leaving the tree."""
    begin = replace(state, steps=(), struck=(), before=None, done=(), events=())
    queue: deque[tuple[JobState, tuple[Choice, ...]]] = deque([(begin, ())])
    seen = {_signature(tables, begin)}
    while queue and len(seen) < MOST_STATES:
        here, way = queue.popleft()
        if is_goal(here):
            return way
        for choice, there in _moves(tables, here):
            signature = _signature(tables, there)
            if signature not in seen:
                seen.add(signature)
                queue.append((there, (*way, choice)))
    return None


def _moves(tables: WalkTables, state: JobState) -> Iterator[tuple[Choice, JobState]]:
    tree = state.frames[0].inside
    for choice, there in _choices(tables, replace(state, passed=(), steps=())):
        if isinstance(there, JobState) and there.frames[0].inside == tree:
            yield choice, there


def _choices(tables: WalkTables, state: JobState) -> Iterator[tuple[Choice, JobState | Refused]]:
    row = row_of(tables, state.frames[-1])
    if state.end and (state.end.kind != "fix" or state.end.verified is not None):
        return
    if row["kind"] == "fix":
        is_testing = state.verifying is not None
        there = judge_test(tables, state, True) if is_testing else verify_next(tables, state, 0)
        yield Choice("pass" if is_testing else "done"), there
    elif row["kind"] == "action":
        yield Choice("done"), leave(tables, state, "done", row.get("then", ""))
    elif "by" in row:
        yield Choice("run"), into_procedure(tables, state, row)
    for at, result in enumerate(row.get("results", ()) if "by" not in row else ()):
        yield Choice("result", at), leave(tables, state, result["text"], result["to"])
    if row["kind"] == "check":
        yield Choice("cannot test"), cannot_test(tables, state)


def _signature(tables: WalkTables, state: JobState) -> object:
    """Return what tells two places of a walk apart; of the counts those that are limited."""
    frames = []
    for frame in state.frames:
        steps = tables[frame.inside]["steps"]
        limited = [(id_, n) for id_, n in frame.counts.items() if "at_most" in steps[id_]]
        came_from = frame.came_from.get(frame.step)
        items = tuple(sorted(frame.items.items()))
        frames.append((frame.inside, frame.step, came_from, items, tuple(sorted(limited)),
                       frame.failed, frame.verifies, frame.waits))  # fmt: skip
    return tuple(frames), state.end, state.verifying
