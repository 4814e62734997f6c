"""What all trees of a shop share, as the table that their walks follow.

In: the library. Out: a `ShopTable`, and `WalkTables` with the trees that are given or loaded.
"""

from collections.abc import Mapping
from typing import cast

from builder.model.conditions import Condition
from builder.model.library import Library
from builder.model.module_record import Module
from builder.walk.compile_tree import is_state, state_row, tree_table
from builder.walk.compile_vehicle import spec_row, vehicle_table
from builder.walk.plain_rows import minutes_as_text, plain_texts, without_empty
from builder.walk.shop_rows import ConditionRow, FittingRow, ShopTable
from builder.walk.table import tool_row
from builder.walk.tree_rows import TreeTable
from builder.walk.walk_tables import WalkTables
from builder.wording.vehicle_words import part_name


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
        "procedures": {
            name: tree_table(one.tree, library) for name, one in library.procedures.items()
        },
        "specs": {id_: spec_row(one) for id_, one in library.specs.items()},
        "vehicles": {id_: vehicle_table(one) for id_, one in library.vehicles.items()},
        "modules": {id_: _fitting_row(one, library) for id_, one in library.modules.items()},
        "parts": {id_: part_name(id_, library) for id_ in (*library.parts, *library.modules)},
        "stuck": {key: str(text) for key, text in library.shop.stuck.items()},
    }


def _condition_row(condition: Condition) -> ConditionRow:
    row = {
        "group": str(condition.group or ""),
        "normal": condition.normal,
        "takes": str(condition.takes or ""),
        "text": str(condition.text or ""),
        "enter": plain_texts(condition.enter),
        "undo": plain_texts(condition.undo),
        "excludes": plain_texts(condition.excludes),
        "changed_with": plain_texts(condition.changed_with),
        # `0` counts: going back to normal takes the minutes of the normal state, if it has any.
        "counts_as": str(condition.counts_as or ""),
        "minutes": "" if condition.minutes is None else f"{condition.minutes:f}",
        "wait": minutes_as_text(condition.wait),
        "hazards": plain_texts(condition.hazards),
    }
    return cast("ConditionRow", without_empty(row))


def _fitting_row(module: Module, library: Library) -> FittingRow:
    fit = module.fit
    if fit is None:
        return {}
    row = {
        "do": plain_texts(fit.do),
        "when": plain_texts(fit.when),
        "needs": [state_row(need, None, library) for need in fit.needs if is_state(need, library)],
        "hazards": plain_texts(fit.hazards),
        "torques": plain_texts(fit.torques),
    }  # fmt: skip
    return cast("FittingRow", without_empty(row))
