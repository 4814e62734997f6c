"""Where a step works, from the data of the vehicle.

In: the tables, the state, the row of a step. Out: rows for the screen; what is to be asked, if the
vehicle has no data.
"""

from collections.abc import Iterator
from typing import Any

from builder.graph.runs import with_values
from builder.walk.job_state import JobState
from builder.walk.shop_rows import ConnectorRow, VehicleTable
from builder.walk.told import named
from builder.walk.tree_rows import WalkStepRow
from builder.walk.walk_tables import WalkTables


def where_rows(tables: WalkTables, state: JobState, row: WalkStepRow) -> list[dict[str, Any]]:
    """Return where a step works: a phrase, pins, fuses, or what was noted of them on this job."""
    where, filled = row.get("where", {}), state.frames[-1].filled
    vehicle = tables.shop["vehicles"].get(state.vehicle)
    rows: list[dict[str, Any]] = []
    if "phrase" in where:
        phrase = with_values(where["phrase"], named(tables, state.frames[-1]))
        rows.append({"phrase": phrase})
    if "connector" in where and vehicle:
        connector = vehicle.get("connectors", {}).get(where["connector"])
        pins = [with_values(pin, filled) for pin in where.get("pins", ())]
        rows += _pins(where["connector"], connector, pins) if connector else []
    for name in names_of_places(state, row):
        rows += _known(vehicle, name) or [{"name": name, "noted": state.filled.get(name, "")}]
    return rows


def names_of_places(state: JobState, row: WalkStepRow) -> list[str]:
    """Return the pins and fuses that a step names by their part: `pin abs-module: power`."""
    where, filled = row.get("where", {}), state.frames[-1].filled
    part = with_values(where.get("part", ""), filled)
    names = [f"pin {part}: {with_values(role, filled)}" for role in where.get("pins", ()) if part]
    return names + ([f"fuse {with_values(where['fuse'], filled)}"] if "fuse" in where else [])


def words_of_place(tables: WalkTables, name: str) -> str:
    """Return the name of a pin or a fuse as people say it: `ABS module: power pin`."""
    kind, _, rest = name.partition(" ")
    part, _, role = rest.partition(": ")
    return f"{tables.shop['parts'].get(part, part)}: {f'{role} {kind}'.strip()}"


def unknown_places(tables: WalkTables, state: JobState, row: WalkStepRow) -> list[str]:
    """Return the names of pins and fuses of which nothing is known yet."""
    vehicle = tables.shop["vehicles"].get(state.vehicle)
    names = names_of_places(state, row)
    return [one for one in names if one not in state.filled and not _known(vehicle, one)]


def _known(vehicle: VehicleTable | None, name: str) -> list[dict[str, Any]]:
    """Return what the vehicle's file has; of a part that it has, a role may have no pin."""
    kind, _, rest = name.partition(" ")
    part, _, role = rest.partition(": ")
    connectors = [
        (id_, one)
        for id_, one in (vehicle or {"text": ""}).get("connectors", {}).items()
        if one["of"] == part
    ]
    if not vehicle or not connectors:
        return []
    if kind == "fuse":
        return [*_fuses(vehicle, [one for _, one in connectors])]
    rows = [
        row
        for id_, connector in connectors
        for row in _pins(id_, connector, _numbers(connector, role))
    ]
    return rows or [{"name": name, "noted": "none on this vehicle"}]


def _numbers(connector: ConnectorRow, role: str) -> list[str]:
    return [number for number, pin in connector["pins"].items() if pin["role"] == role]


def _pins(id_: str, connector: ConnectorRow, numbers: list[str]) -> list[dict[str, Any]]:
    place = {"connector": id_, "where": connector.get("where", "")}
    pins = connector["pins"]
    return [{**place, "pin": number, **pins[number]} for number in numbers if number in pins]


def _fuses(vehicle: VehicleTable, connectors: list[ConnectorRow]) -> Iterator[dict[str, Any]]:
    """Yield the fuses of the power pins of a part."""
    pins = (pin for one in connectors for pin in one["pins"].values() if pin["role"] == "power")
    for id_ in dict.fromkeys(pin["fuse"] for pin in pins if "fuse" in pin):
        yield {"fuse": id_, **vehicle.get("fuses", {}).get(id_, {})}
