"""The rows of the walk's tables that all trees of a shop share.

In: filled in by `compile_shop` and what it uses. Out: read by the reducer. `walk_tables` says how
rows are written.
"""

from collections.abc import Mapping
from typing import NotRequired, TypedDict

from builder.walk.rows import CutPair, ToolRow
from builder.walk.tree_rows import StateRow, TreeTable


class ConditionRow(TypedDict):
    """A condition of the shop, for the planner of states; the keys are those of the format."""

    group: NotRequired[str]
    normal: NotRequired[bool]
    takes: NotRequired[str]  # part, current
    text: NotRequired[str]
    enter: NotRequired[list[str]]
    undo: NotRequired[list[str]]
    excludes: NotRequired[list[str]]
    changed_with: NotRequired[list[str]]
    counts_as: NotRequired[str]  # power off: taken before other changes
    starts_engine: NotRequired[bool]
    minutes: NotRequired[str]
    wait: NotRequired[str]
    hazards: NotRequired[list[str]]


class HazardRow(TypedDict):
    """A caution: the signal word, one line of it, and its three parts."""

    signal: str  # DANGER, WARNING, CAUTION, NOTICE
    short: str
    hazard: str
    harm: str
    avoid: str


class GoodRow(TypedDict):
    """What is good of a spec: a range for each load ("" for any), or what to look up."""

    ranges: NotRequired[dict[str, CutPair]]
    look_up: NotRequired[list[str]]  # from, to; or one of them
    source: NotRequired[str]


class SpecRow(TypedDict):
    """What can be measured, and what is good where the vehicle says nothing."""

    text: str
    unit: str
    low: str
    high: str
    good: GoodRow


class PinRow(TypedDict):
    """One pin of a connector; of these words only the role is always there."""

    role: str
    circuit: NotRequired[str]
    wire: NotRequired[str]
    to: NotRequired[str]
    fuse: NotRequired[str]


class ConnectorRow(TypedDict):
    """A connector of a part; its pins by number."""

    of: str
    pins: dict[str, PinRow]
    where: NotRequired[str]
    face: NotRequired[list[list[str]]]  # the pin numbers of each row
    tab: NotRequired[str]
    seen_from: NotRequired[str]


class FuseRow(TypedDict):
    """A fuse: its box, amperes, what it feeds."""

    box: str
    amps: str
    feeds: NotRequired[str]


class TorqueRow(TypedDict):
    """A torque as it's written: `81 lb-ft (110 N·m)`."""

    text: str
    note: NotRequired[str]


class VehicleTable(TypedDict):
    """A vehicle: its words, the items of its lists, its specs, connectors, fuses and torques."""

    text: str
    lists: NotRequired[dict[str, list[str]]]
    specs: NotRequired[dict[str, GoodRow]]
    connectors: NotRequired[dict[str, ConnectorRow]]
    fuses: NotRequired[dict[str, FuseRow]]
    torques: NotRequired[dict[str, TorqueRow]]


class FittingRow(TypedDict):
    """How a module is fitted: added to every fix that replaces it."""

    do: NotRequired[list[str]]
    when: NotRequired[list[str]]
    needs: NotRequired[list[StateRow]]
    hazards: NotRequired[list[str]]
    torques: NotRequired[list[str]]


class ShopTable(TypedDict):
    """What all trees of a shop share; a page may hold only the entries that its tree names."""

    conditions: Mapping[str, ConditionRow]  # in the order of the file
    hazards: Mapping[str, HazardRow]
    tools: Mapping[str, ToolRow]
    procedures: Mapping[str, TreeTable]
    specs: Mapping[str, SpecRow]
    vehicles: Mapping[str, VehicleTable]
    modules: Mapping[str, FittingRow]
    parts: Mapping[str, str]  # the names of parts and modules in a sentence: `ABS module`
    stuck: Mapping[str, str]  # the person to call: call, phone
