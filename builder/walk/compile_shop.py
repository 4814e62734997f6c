"""What all trees of a shop share, as the table that their walks follow.

In: the library. Out: a `ShopTable`, and `WalkTables` with the trees that are given or loaded.
"""

from collections.abc import Mapping
from typing import cast

from builder.model.conditions import Condition
from builder.model.knowledge import Vehicle
from builder.model.library import Library
from builder.walk.compile_tree import minutes_as_text, without_empty
from builder.walk.table import tool_row
from builder.walk.walk_tables import ConditionRow, ShopTable, TreeTable, VehicleTable, WalkTables


def walk_tables(library: Library, trees: Mapping[str, TreeTable]) -> WalkTables:
    """Return all that walks of these trees may come to."""
    return WalkTables(shop_table(library), trees, library.conditions)


def shop_table(library: Library) -> ShopTable:
    """Compile what the trees of a shop share."""
    hazards = library.hazards.values()
    return {
        "conditions": {id_: _condition_row(one) for id_, one in library.conditions.items()},
        "hazards": {
            str(one.id): {
                "signal": str(one.signal),
                "short": str(one.short),
                "hazard": str(one.hazard),
                "harm": str(one.harm),
                "avoid": str(one.avoid),
            }
            for one in hazards
        },
        "tools": {id_: tool_row(tool) for id_, tool in library.tools.items() if tool.reads},
        "procedures": {},
        "specs": {},
        "vehicles": {id_: _vehicle_table(one) for id_, one in library.vehicles.items()},
        "stuck": {key: str(text) for key, text in library.shop.stuck.items()},
    }


def _condition_row(condition: Condition) -> ConditionRow:
    row = {
        "group": str(condition.group or ""),
        "normal": condition.normal,
        "takes": str(condition.takes or ""),
        "text": str(condition.text or ""),
        "enter": [*map(str, condition.enter)],
        "undo": [*map(str, condition.undo)],
        "excludes": [*map(str, condition.excludes)],
        "changed_with": [*map(str, condition.changed_with)],
        # `0` counts: going back to normal takes the minutes of the normal state, if it has any.
        "minutes": "" if condition.minutes is None else f"{condition.minutes:f}",
        "wait": minutes_as_text(condition.wait),
        "hazards": [*map(str, condition.hazards)],
    }
    return cast("ConditionRow", without_empty(row))


def _vehicle_table(vehicle: Vehicle) -> VehicleTable:
    scope = vehicle.scope
    years = "-".join(map(str, dict.fromkeys(scope.years))) if scope.years else ""
    row = {
        "text": f"{scope.make} {scope.model} {years}".strip(),
        "lists": {str(name): [*map(str, items)] for name, items in vehicle.lists.items()},
    }
    return cast("VehicleTable", without_empty(row))
