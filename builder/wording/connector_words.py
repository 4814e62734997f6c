"""Connectors, pins, wires and fuses of a vehicle as people say them.

In: what the vehicle's file has, and the library for the names of parts. Out: `EPS module C1`,
`white/blue (WH/BU) 0.8 mm²`, `fuse 21 (10 A, under the hood)`.
"""

from builder.model.library import Library
from builder.model.vehicle_data import Connector, Fuse, Good, Pin
from builder.trade.wire_colors import wire_of
from builder.wording.results import NO_BREAK
from builder.wording.value_text import number_text, spoken_limit, unit_label
from builder.wording.vehicle_words import part_name


def connector_name(connector: Connector, library: Library) -> str:
    """Name a connector by its part, and by what its ID says more: `EPS module C1`."""
    id_, of = str(connector.id), str(connector.of)
    more = id_.removeprefix(of).strip("-").upper() if id_.startswith(of) else id_
    return f"{part_name(of, library)} {more}".strip()


def color_text(wire: str) -> str:
    """Name the colors of a wire, base first; a wire of no known color as it's written."""
    known = wire_of(wire)
    return "/".join(color.name for color in known.colors) if known else wire


def wire_text(wire: str) -> str:
    """Write a wire with its colors by name, its code, and its size."""
    known = wire_of(wire)
    return f"{color_text(wire)} ({known.code}) {known.size}".strip() if known else wire


def fuse_text(fuse: Fuse) -> str:
    """Write a fuse with its rating and its box."""
    return f"fuse {fuse.id} ({number_text(fuse.amps)} A, {fuse.box})"


def pin_text(pin: Pin, fuse: Fuse | None = None) -> str:
    """Write a pin with its role and wire, and the fuse in its circuit where one is known."""
    parts = [f"pin{NO_BREAK}{pin.number} ({pin.role})", wire_text(pin.wire) if pin.wire else ""]
    return ", ".join(filter(None, [*parts, fuse_text(fuse) if fuse else ""]))


def good_text(good: Good, unit: str) -> str:
    """Write a good range with its unit, or one for each load."""
    if good.by_load:
        rows = (f"{good_text(one, unit)} at {load}" for load, one in good.by_load.items())
        return "; ".join(rows)
    words = f"{good.text} {unit_label(unit)}" if good.range else str(good.text)
    return spoken_limit(words)
