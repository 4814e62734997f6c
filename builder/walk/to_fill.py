"""What a walk asks for before its step can be shown: questions of the tree, lists, specs.

In: the tables, a state. Out: what is missing, as the screen lists it.
"""

from typing import NotRequired, TypedDict

from builder.walk.list_items import items_of
from builder.walk.told import row_of
from builder.walk.walk_state import WalkState
from builder.walk.walk_tables import WalkTables


class FillRow(TypedDict):
    """Something to fill in: `one_of` are the choices, [] for free text; `list`: several."""

    name: str
    ask: str
    one_of: list[str]
    list: NotRequired[bool]


def asks_at(tables: WalkTables, state: WalkState) -> list[FillRow]:
    """Return what is still to be filled in; [] once the step can be shown."""
    if not state.frames:
        return []
    frame = state.frames[-1]
    asks = tables[frame.inside].get("asks", {})
    rows: list[FillRow] = [
        {"name": name, "ask": row["ask"], "one_of": row["one_of"]}
        for name, row in asks.items()
        if name not in frame.filled
    ]
    row = row_of(tables, frame)
    if "each" in row and items_of(tables, state, row) is None:
        rows.append({"name": row["each"][1], "ask": row["each"][1], "one_of": [], "list": True})
    return rows


def unanswered(tables: WalkTables, state: WalkState) -> str:
    """Return the names of what is still to be filled in; "" for nothing."""
    return ", ".join(row["name"] for row in asks_at(tables, state))
