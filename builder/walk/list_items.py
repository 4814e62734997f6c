"""The items of a list that a step goes through, one after another.

In: the tables, a state. Out: the items; the state with the item filled in.
"""

from dataclasses import replace

from builder.walk.job_state import JobState
from builder.walk.told import row_of
from builder.walk.tree_rows import WalkStepRow
from builder.walk.walk_tables import WalkTables


def items_of(tables: WalkTables, state: JobState, row: WalkStepRow) -> tuple[str, ...] | None:
    """Return the items of the list that a step goes through; None if it has none, or none yet."""
    if "each" not in row:
        return None
    name, tree = row["each"][1], tables[state.frames[-1].inside]
    vehicle = tables.shop["vehicles"].get(state.vehicle)
    known = tree.get("lists", {}).get(name) or (vehicle and vehicle.get("lists", {}).get(name))
    return tuple(known or state.filled.get(name, ())) or None


def with_item(tables: WalkTables, state: JobState) -> JobState:
    """Fill in the item of the list that a step goes through."""
    frame, row = state.frames[-1], row_of(tables, state.frames[-1])
    items = items_of(tables, state, row)
    if items is None:
        return state
    filled = {**frame.filled, row["each"][0]: items[frame.items[frame.step]]}
    return replace(state, frames=(*state.frames[:-1], replace(frame, filled=filled)))
