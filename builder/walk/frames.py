"""Frames that are put on top of others: a check that verifies, what a procedure takes.

In: the tables, a state or its frame. Out: the state with the frames; the values.
"""

from dataclasses import replace

from builder.graph.runs import with_values
from builder.walk.job_state import JobState, WalkFrame
from builder.walk.tree_rows import ByRow, TreeTable
from builder.walk.walk_tables import WalkTables


def taken(procedure: TreeTable, by: ByRow, caller: WalkFrame) -> dict[str, str]:
    """Return what a procedure takes, as its caller hands it over or by its default."""
    values = {name: with_values(value, caller.filled) for name, value in by["takes"].items()}
    return {**procedure.get("defaults", {}), **values}


def with_waiting(tables: WalkTables, state: JobState, step: str) -> JobState:
    """Put a check on top, and on top of it the steps that come before it."""
    fix = state.frames[-1]
    first = tables[fix.inside]["steps"][step].get("after", [])
    frames = [WalkFrame(fix.inside, "", verifies=True, filled=fix.filled, waits=step)]
    frames += [replace(frames[0], waits=one, aside=True) for one in reversed(first)]
    return replace(state, frames=(*state.frames, *frames))
