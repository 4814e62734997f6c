"""The shortest way from where a walk is to an end, whatever has to be seen on it.

In: the tables, a state, the goal. Out: the moves in their order, or None where no way leads there.
The simulated vehicle answers so that the walk takes it.
"""

from collections import deque
from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import NamedTuple

from builder.walk.events import Value
from builder.walk.job_state import JobState, Refused, is_over
from builder.walk.targets import cannot_test, into_procedure, judge_test, leave, verify_next
from builder.walk.told import row_of
from builder.walk.walk_tables import WalkTables

MOST_STATES = 5000  # looked at before it is given up
TWO_ITEMS = ("first", "second")


class Choice(NamedTuple):
    """How a step is left: by a result, done, run, passed, or because it can't be tested."""

    kind: str
    result: int = -1


Goal = Callable[[JobState], bool]
Signature = Callable[[WalkTables, JobState], object]


def way_to(tables: WalkTables, state: JobState, is_goal: Goal) -> tuple[Choice, ...] | None:
    """Return few choices that lead to the goal.

    The way stays in the tree, and begins no repair on it but the last. Most ends are reached
    without doing a step twice, so that is tried first; then lists, then limits that are used up.
    """
    filled = {**_lists_to_fill(tables, state), **state.filled}
    begin = replace(state, filled=filled, steps=(), struck=(), before=None, done=(), events=())
    ways = (_search(tables, begin, is_goal, how) for how in (_by_place, _by_item, _by_count))
    return next((way for way in ways if way is not None), None)


def _lists_to_fill(tables: WalkTables, state: JobState) -> dict[str, Value]:
    """Return two items for every list that may be asked for, so that it can come to its end."""
    tables_here = (tables[frame.inside]["steps"].values() for frame in state.frames)
    return {row["each"][1]: TWO_ITEMS for rows in tables_here for row in rows if "each" in row}


def _search(
    tables: WalkTables, begin: JobState, is_goal: Goal, signature: Signature
) -> tuple[Choice, ...] | None:
    queue: deque[tuple[JobState, tuple[Choice, ...]]] = deque([(begin, ())])
    seen = {signature(tables, begin)}
    while queue and len(seen) < MOST_STATES:
        here, way = queue.popleft()
        if is_goal(here):
            return way
        if bool(here.end) != bool(begin.end):
            continue
        for choice, there in _moves(tables, here):
            of_there = signature(tables, there)
            if of_there not in seen:
                seen.add(of_there)
                queue.append((there, (*way, choice)))
    return None


def _moves(tables: WalkTables, state: JobState) -> Iterator[tuple[Choice, JobState]]:
    tree = state.frames[0].inside
    for choice, there in _choices(tables, replace(state, passed=(), steps=())):
        if isinstance(there, JobState) and there.frames[0].inside == tree:
            yield choice, there


def _choices(tables: WalkTables, state: JobState) -> Iterator[tuple[Choice, JobState | Refused]]:
    row = row_of(tables, state.frames[-1])
    if is_over(state):
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


# What tells two places of a walk apart.


def _by_place(_: WalkTables, state: JobState) -> object:
    frames = ((one.place, one.came_from.get(one.step), one.waits) for one in state.frames)
    return tuple(frames), state.end, state.verifying


def _by_item(tables: WalkTables, state: JobState) -> object:
    items = (tuple(one.items.items()) for one in state.frames)
    return _by_place(tables, state), tuple(items)


def _by_count(tables: WalkTables, state: JobState) -> object:
    counts = []
    for frame in state.frames:
        steps = tables[frame.inside]["steps"]
        limited = ((id_, n) for id_, n in frame.counts.items() if "at_most" in steps[id_])
        counts.append((tuple(sorted(limited)), frame.failed))
    return _by_item(tables, state), tuple(counts)
