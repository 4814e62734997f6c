"""The connectors of a vehicle: each drawn as a face, its pins in a table beside it.

In: a connector, the pins that trees ask for. Out: `ConnectorView`, ready to be laid out.
"""

from collections.abc import Collection, Iterator
from typing import NamedTuple

from markupsafe import Markup

from builder.model.library import Library
from builder.model.vehicle_data import Connector, Pin, Vehicle
from builder.pages.connector_face import face_caption, face_drawing
from builder.trade.wire_colors import wire_of
from builder.wording.connector_words import color_text, connector_name
from builder.wording.sentences import capitalized

_SWATCH = Markup('<svg class="swatch" viewBox="0 0 36 21" width="36" aria-hidden="true">{}</svg>')
_STRIPE = Markup('<rect y="{}" width="36" height="{}" fill="{}"/>')


class PinView(NamedTuple):
    """A pin in the table."""

    pin: Pin
    asked: bool  # whether a tree asks for it
    swatch: Markup  # of its wire; "" where the color isn't known
    color: str
    code: str  # and size of the wire, where its color is known


class ConnectorView(NamedTuple):
    """A connector with its face and its table."""

    connector: Connector
    name: str
    face: Markup  # "" where the file doesn't say how the pins lie
    caption: str
    pins: tuple[PinView, ...]


def connector_view(
    connector: Connector, asked: Collection[tuple[str, str]], library: Library
) -> ConnectorView:
    """Lay out a connector; `asked` are the pins that trees ask for, each with its connector."""
    marked = [number for number in connector.pins if (connector.id, number) in asked]
    return ConnectorView(
        connector,
        capitalized(connector_name(connector, library)),
        face_drawing(connector, marked),
        face_caption(connector),
        tuple(_pin_view(pin, number in marked) for number, pin in connector.pins.items()),
    )


def vehicle_connectors(
    vehicle: Vehicle, asked: Collection[tuple[str, str]], library: Library
) -> Iterator[ConnectorView]:
    """Yield the connectors of a vehicle, in the order of its file."""
    for connector in vehicle.connectors.values():
        yield connector_view(connector, asked, library)


def _pin_view(pin: Pin, asked: bool) -> PinView:
    wire = str(pin.wire or "")
    known = wire_of(wire)
    code = f"{known.code} {known.size}".strip() if known else ""
    return PinView(pin, asked, wire_swatch(wire), color_text(wire), code)


def wire_swatch(wire: str) -> Markup:
    """Draw the color of a wire, its stripe in the middle."""
    known = wire_of(wire)
    if known is None:
        return Markup("")
    places = zip(known.colors, ((0, 21), (7, 7)), strict=False)
    bands = (_STRIPE.format(y, high, color.shade) for color, (y, high) in places)
    return _SWATCH.format(Markup("").join(bands))
