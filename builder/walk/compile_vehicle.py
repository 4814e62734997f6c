"""What can be measured and what is known of a vehicle, as the walk's table has them.

In: specs and vehicles of the library. Out: rows for JSON.
"""

from typing import cast

from builder.model.ranges import INFINITY, Cut
from builder.model.vehicle_data import Connector, Fuse, Good, LimitShape, Pin, Spec, Torque, Vehicle
from builder.trade.units import find_unit
from builder.walk.plain_rows import plain_texts, without_empty
from builder.walk.rows import CutPair
from builder.walk.shop_rows import (
    ConnectorRow,
    FuseRow,
    GoodRow,
    PinRow,
    SpecRow,
    TorqueRow,
    VehicleTable,
)
from builder.wording.value_text import torque_text

_LOOK_UP = {
    LimitShape.BAND: ["from", "to"],
    LimitShape.AT_LEAST: ["from"],
    LimitShape.AT_MOST: ["to"],
}


def spec_row(spec: Spec) -> SpecRow:
    """Return a spec; its unit as our list has it."""
    unit = find_unit(spec.unit)
    return {
        "text": str(spec.text),
        "unit": unit.symbol if unit else str(spec.unit),
        "low": f"{spec.low:f}",
        "high": f"{spec.high:f}",
        "good": good_row(spec.good, str(spec.origin or "")),
    }


def good_row(good: Good, source: str) -> GoodRow:
    """Return what is good: the ranges by load, or what is to be looked up."""
    by_load = {"": good, **good.by_load}
    ranges = {load: _cuts(one) for load, one in by_load.items() if one.range is not None}
    look_up = [] if ranges else _LOOK_UP[good.shape]
    row = {"ranges": ranges, "look_up": look_up, "source": source}
    return cast("GoodRow", without_empty(row))


def _cuts(good: Good) -> CutPair:
    assert good.range
    low, high = good.range
    return [_cut(low, after=0), _cut(high, after=1)]


def _cut(cut: Cut, *, after: int) -> list[str | int]:
    """Return a cut; a range without an upper limit takes OL too."""
    is_open = cut.value in (INFINITY, -INFINITY)
    return [f"{cut.value:f}", after if is_open else int(cut.after)]


def vehicle_table(vehicle: Vehicle) -> VehicleTable:
    """Return a vehicle."""
    scope = vehicle.scope
    years = "-".join(map(str, dict.fromkeys(scope.years))) if scope.years else ""
    row = {
        "text": f"{scope.make} {scope.model} {years}".strip(),
        "lists": {str(name): plain_texts(items) for name, items in vehicle.lists.items()},
        "specs": {
            id_: good_row(one.good, str(one.source or "")) for id_, one in vehicle.specs.items()
        },
        "connectors": {id_: _connector_row(one) for id_, one in vehicle.connectors.items()},
        "fuses": {id_: _fuse_row(one) for id_, one in vehicle.fuses.items()},
        "torques": {id_: _torque_row(one) for id_, one in vehicle.torques.items()},
    }
    return cast("VehicleTable", without_empty(row))


def _connector_row(connector: Connector) -> ConnectorRow:
    more = without_empty({
        "where": str(connector.where or ""),
        "face": [list(row) for row in connector.face],
        "tab": str(connector.tab or ""),
        "seen_from": str(connector.seen_from or ""),
    })  # fmt: skip
    pins = {str(number): _pin_row(pin) for number, pin in connector.pins.items()}
    return cast("ConnectorRow", {"of": str(connector.of), "pins": pins} | more)


def _pin_row(pin: Pin) -> PinRow:
    row = {
        "role": str(pin.role),
        "circuit": str(pin.circuit or ""),
        "wire": str(pin.wire or ""),
        "to": str(pin.to or ""),
        "fuse": str(pin.fuse or ""),
    }
    return cast("PinRow", without_empty(row))


def _fuse_row(fuse: Fuse) -> FuseRow:
    row = {"box": str(fuse.box), "amps": f"{fuse.amps:f}", "feeds": str(fuse.feeds or "")}
    return cast("FuseRow", without_empty(row))


def _torque_row(torque: Torque) -> TorqueRow:
    row = {"text": torque_text(torque.newton_meters), "note": str(torque.note or "")}
    return cast("TorqueRow", without_empty(row))
