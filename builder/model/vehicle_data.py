"""What is known of a vehicle, and what can be measured on any.

In: filled by the reader from `kb/specs.yml`, `kb/parts.yml` and `kb/vehicles/`. Out: values in the
library.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from enum import StrEnum

from builder.model.ranges import Range
from builder.model.text import Number, Text
from builder.model.tree import Scope

PIN_ROLES = (
    "power", "switched power", "ground", "CAN-H", "CAN-L", "LIN", "sense", "command", "lamp",
    "signal", "signal return", "reference", "shield", "not used",
)  # fmt: skip


TAB_SIDES = ("top", "bottom", "left", "right")
SEEN_FROM = ("wire side", "mating side")


class LimitShape(StrEnum):
    """Where a spec has its limits."""

    BAND = "band"
    AT_MOST = "at most"
    AT_LEAST = "at least"


@dataclass(frozen=True, slots=True)
class Good:
    """The good range of a spec: known, known for each load, or to be looked up."""

    text: Text  # as written
    shape: LimitShape
    range: Range | None = None  # None: to be looked up, or by load
    by_load: Mapping[str, "Good"] = field(default_factory=dict)  # by current, such as `9 A`


@dataclass(frozen=True, slots=True)
class Spec:
    """Something to measure: its unit, its span, and what is good where the vehicle says nothing."""

    id: Text
    text: Text  # what is measured
    unit: Text
    low: Decimal
    high: Decimal  # infinity where `to: OL`
    good: Good
    resolution: Number | None = None
    origin: Text | None = None


@dataclass(frozen=True, slots=True)
class VehicleSpec:
    """The good range of a spec on one vehicle."""

    good: Good
    source: Text | None = None


@dataclass(frozen=True, slots=True)
class Pin:
    """One pin of a connector."""

    number: Text
    role: Text
    circuit: Text | None = None
    wire: Text | None = None  # color code and size, as the wiring diagram has them
    to: Text | None = None
    fuse: Text | None = None


@dataclass(frozen=True, slots=True)
class Connector:
    """A connector of a part, and how its face is drawn."""

    id: Text
    of: Text  # the part
    pins: Mapping[str, Pin]
    where: Text | None = None
    face: tuple[tuple[str, ...], ...] = ()  # the pin numbers of each row; () where not known
    tab: Text | None = None  # the side of the locking tab
    seen_from: Text | None = None  # the side from which the face is seen


@dataclass(frozen=True, slots=True)
class Fuse:
    """A fuse of a vehicle."""

    id: Text
    box: Text
    amps: Number
    feeds: Text | None = None


@dataclass(frozen=True, slots=True)
class Torque:
    """A tightening torque in newton meters."""

    id: Text
    newton_meters: Number
    note: Text | None = None
    source: Text | None = None


@dataclass(frozen=True, slots=True)
class Vehicle:
    """A vehicle that the shop works on."""

    id: Text
    file: str
    scope: Scope
    lists: Mapping[str, tuple[Text, ...]] = field(default_factory=dict)
    note: Text | None = None
    specs: Mapping[str, VehicleSpec] = field(default_factory=dict)
    connectors: Mapping[str, Connector] = field(default_factory=dict)
    fuses: Mapping[str, Fuse] = field(default_factory=dict)
    torques: Mapping[str, Torque] = field(default_factory=dict)
    source: Mapping[str, Text] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class VehiclePart:
    """A part that trees name; a module's id is a part's name too."""

    id: Text
    name: Text
    also_called: tuple[Text, ...] = ()
