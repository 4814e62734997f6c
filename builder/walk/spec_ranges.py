"""What a spec makes good on this job: on its vehicle, at the load of the step, or looked up.

In: the tables, the state, the row of a check. Out: the row with the ranges of its readings.
"""

from collections.abc import Mapping
from typing import cast

from builder.graph.runs import with_values
from builder.walk.job_state import JobState
from builder.walk.rows import CutPair, ReadingRow
from builder.walk.shop_rows import GoodRow, SpecRow
from builder.walk.tree_rows import WalkResultRow, WalkStepRow
from builder.walk.walk_tables import WalkTables

LOWEST: list[str | int] = ["-Infinity", 0]
HIGHEST: list[str | int] = ["Infinity", 1]
_NEVER: CutPair = [HIGHEST, LOWEST]


def with_ranges(tables: WalkTables, state: JobState, row: WalkStepRow) -> WalkStepRow:
    """Return the row of a check with units, spans and ranges of the specs it names."""
    if "specs" not in row:
        return row
    goods = good_ranges(tables, state, row)
    names = spec_names(state, row)
    filled = {
        "readings": [
            _reading(one, tables.shop["specs"].get(names.get(one["name"], "")))
            for one in row["readings"]
        ],
        "results": [_result(one, names, goods) for one in row["results"]],
    }
    return cast("WalkStepRow", {**row, **filled})


def spec_names(state: JobState, row: WalkStepRow) -> dict[str, str]:
    """Return the spec of each reading that has one."""
    filled = state.frames[-1].filled
    return {name: with_values(spec, filled) for name, spec in row.get("specs", {}).items()}


def good_ranges(tables: WalkTables, state: JobState, row: WalkStepRow) -> dict[str, CutPair]:
    """Return the good range of each reading, where it's known."""
    load = load_of_row(state, row)
    ranges: dict[str, CutPair] = {}
    for name, spec in spec_names(state, row).items():
        good = good_of_spec(tables, state, spec)
        by_load = good.get("ranges", {})
        cuts = by_load.get(load) or by_load.get("") or _looked_up(state, spec, good)
        if cuts:
            ranges[name] = cuts
    return ranges


def load_of_row(state: JobState, row: WalkStepRow) -> str:
    """Return the current of the load that a step needs; "" for none."""
    values = (value for _, _, value in row.get("needs", ()) if value)
    return with_values(next(values, ""), state.frames[-1].filled)


def good_of_spec(tables: WalkTables, state: JobState, spec: str) -> GoodRow:
    """Return what is good of a spec: on the vehicle, else on any."""
    vehicle = tables.shop["vehicles"].get(state.vehicle)
    own = vehicle.get("specs", {}).get(spec) if vehicle else None
    general = tables.shop["specs"].get(spec)
    return own or (general["good"] if general else {})


def _looked_up(state: JobState, spec: str, good: GoodRow) -> CutPair | None:
    typed = state.filled.get(f"spec {spec}")
    names = good.get("look_up", [])
    if not typed or not names:
        return None
    limits = dict(zip(names, (typed,) if isinstance(typed, str) else typed, strict=True))
    low, high = limits.get("from"), limits.get("to")
    return [[low, 0] if low else LOWEST, [high, 1] if high else HIGHEST]


def _reading(reading: ReadingRow, spec: SpecRow | None) -> ReadingRow:
    if spec is None:
        return reading
    return {**reading, "unit": spec["unit"], "low": spec["low"], "high": spec["high"]}


def _result(
    result: WalkResultRow, names: Mapping[str, str], goods: Mapping[str, CutPair]
) -> WalkResultRow:
    """Return a result with the ranges of its words; nothing shown is no range."""
    places = {name: word for name, word in result.get("places", {}).items() if name in names}
    ranges = {name: _range_of(word, goods.get(name)) for name, word in places.items()}
    return {**result, "ranges": {**result["ranges"], **ranges}}


def _range_of(word: str, good: CutPair | None) -> CutPair:
    if good is None or word == "none":
        return _NEVER
    return {"below spec": [LOWEST, good[0]], "above spec": [good[1], HIGHEST]}.get(word, good)
