"""What all trees of a shop share, as the table that their walks follow.

In: the library. Out: a `ShopTable`, and `WalkTables` with the trees that are given or loaded.
"""

from collections import ChainMap
from collections.abc import Mapping
from typing import Any, cast

from builder.model.conditions import Condition
from builder.model.knowledge import Hazard
from builder.model.library import Library
from builder.model.module_record import Module
from builder.walk.compile_tree import is_state, state_row, tree_table
from builder.walk.compile_vehicle import spec_row, vehicle_table
from builder.walk.compiled_rows import CompiledRows
from builder.walk.plain_rows import minutes_as_text, plain_texts, without_empty
from builder.walk.shop_rows import ConditionRow, FittingRow, HazardRow, ShopTable
from builder.walk.table import tool_row
from builder.walk.tree_rows import TreeTable
from builder.walk.walk_tables import WalkTables
from builder.wording.vehicle_words import part_name


def walk_tables(library: Library, trees: Mapping[str, TreeTable]) -> WalkTables:
    """Return all that walks of these trees may come to."""
    return WalkTables(shop_table(library), trees, library.conditions)


def looked_up_tables(library: Library, trees: Mapping[str, TreeTable]) -> WalkTables:
    """Return the same, each row of the shop compiled when a walk first looks it up.

    So a tree whose closed jobs are walked again depends on its own tools, not on every tool.
    """
    return WalkTables(_looked_up(library), trees, library.conditions)


def shop_table(library: Library) -> ShopTable:
    """Compile what the trees of a shop share; a tool that reads nothing tells a walk nothing."""
    table: dict[str, Any] = {kind: dict(cast("Mapping[str, Any]", rows))
                             for kind, rows in _looked_up(library).items()}  # fmt: skip
    table["tools"] = {id_: tool for id_, tool in table["tools"].items() if tool["reads"]}
    return cast("ShopTable", table)


def _looked_up(library: Library) -> ShopTable:
    named: ChainMap[str, Any] = ChainMap(library.modules, library.parts)  # type: ignore[arg-type]  # never written to
    return {
        "conditions": CompiledRows(library.conditions, _condition_row),
        "hazards": CompiledRows(library.hazards, _hazard_row),
        "tools": CompiledRows(library.tools, tool_row),
        "procedures": CompiledRows(library.procedures, lambda one: tree_table(one.tree, library)),
        "specs": CompiledRows(library.specs, spec_row),
        "vehicles": CompiledRows(library.vehicles, vehicle_table),
        "modules": CompiledRows(library.modules, lambda one: _fitting_row(one, library)),
        "parts": CompiledRows(named, lambda one: part_name(one.id, library)),
        "stuck": {key: str(text) for key, text in library.shop.stuck.items()},
    }


def _hazard_row(hazard: Hazard) -> HazardRow:
    return {
        "signal": str(hazard.signal),
        "short": str(hazard.short),
        "hazard": str(hazard.hazard),
        "harm": str(hazard.harm),
        "avoid": str(hazard.avoid),
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
        "starts_engine": condition.starts_engine,
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
