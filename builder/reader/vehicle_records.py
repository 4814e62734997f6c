"""Specs, parts and vehicles from their maps.

In: maps that have passed their schema. Out: records by id, and a finding for every good range that
can't be read.
"""

from collections.abc import Mapping
from decimal import Decimal
from pathlib import PurePosixPath

from builder.model.finding import Finding
from builder.model.ranges import BOTTOM, INFINITY, TOP, Range
from builder.model.text import Text
from builder.model.vehicle_data import (
    Fuse,
    Good,
    LimitShape,
    Spec,
    Torque,
    Vehicle,
    VehiclePart,
    VehicleSpec,
)
from builder.reader.connector_records import connector
from builder.reader.nodes import Map
from builder.reader.range_words import parse_range, unit_after
from builder.reader.source import mistake
from builder.reader.spec_units import unit_written_out
from builder.reader.turned_ends import turned_years
from builder.reader.values import (
    map_,
    maps_by_name,
    named_lists,
    named_texts,
    number,
    scope,
    text,
    texts,
    the_number,
    the_text,
)

LOOK_UP = {
    "look it up": LimitShape.BAND,
    "at most, look it up": LimitShape.AT_MOST,
    "at least, look it up": LimitShape.AT_LEAST,
}
WHY = "the walk can't tell a good reading from a bad one"


def specs(root: Map, findings: list[Finding]) -> dict[str, Spec]:
    """Read kb/specs.yml."""
    return {str(id_): _spec(id_, node, findings) for id_, node in maps_by_name(root)}


def _spec(id_: Text, node: Map, findings: list[Finding]) -> Spec:
    return Spec(
        id=id_,
        text=the_text(node, "text"),
        unit=the_text(node, "unit"),
        low=number(node, "from") or Decimal(0),
        high=INFINITY if text(node, "to") == "OL" else number(node, "to") or Decimal(0),
        good=_good(node, the_text(node, "unit"), findings),
        resolution=number(node, "resolution"),
        origin=text(node, "origin"),
    )


def _good(node: Map, unit: str, findings: list[Finding]) -> Good:
    """Return the good range of a spec, or one for each load; a mistake counts as not known."""
    loads = map_(node, "good")
    if loads is None:
        return _good_range(the_text(node, "good", "look it up"), unit, findings)
    by_load: dict[str, Good] = {}
    for load, words in loads.items():
        if not load.startswith("at "):
            findings.append(mistake("bad-value", load.at, f"`{load}` isn't a load", WHY,
                                    "write a current, such as `at 2 A`"))  # fmt: skip
        elif isinstance(words, Text):
            by_load[load.removeprefix("at ")] = _good_range(words, unit, findings)
    shapes = [good.shape for good in by_load.values()]
    return Good(node.key("good"), shapes[0] if shapes else LimitShape.BAND, by_load=by_load)


def _good_range(words: Text, of_spec: str, findings: list[Finding]) -> Good:
    if words in LOOK_UP:
        return Good(words, LOOK_UP[words])
    span = parse_range(words)
    if isinstance(span, Range):
        return Good(words, _shape(span), span)
    if unit := unit_after(words.removesuffix(".")):
        message, hint = unit_written_out(words, unit, of_spec)
        findings.append(mistake("bad-value", words.at, message, WHY, hint))
        return Good(words, LimitShape.BAND)
    listed = ", ".join(f"`{one}`" for one in LOOK_UP)
    findings.append(mistake("bad-value", words.at, f"`{words}` isn't a range", WHY,
                            f"{span}; where it isn't known, {listed}"))  # fmt: skip
    return Good(words, LimitShape.BAND)


def _shape(span: Range) -> LimitShape:
    if span.low == BOTTOM:
        return LimitShape.AT_MOST
    return LimitShape.AT_LEAST if span.high == TOP else LimitShape.BAND


def vehicle_parts(root: Map) -> dict[str, VehiclePart]:
    """Read kb/parts.yml."""
    return {
        str(id_): VehiclePart(id_, the_text(node, "name"), texts(node, "also_called"))
        for id_, node in maps_by_name(root)
    }


def vehicle(file: str, root: Map, specs: Mapping[str, Spec], findings: list[Finding]) -> Vehicle:
    """Read one file of kb/vehicles/; its values are in the units of the specs."""
    findings += turned_years(root)
    return Vehicle(
        id=Text(PurePosixPath(file).stem, root.key("make").at),
        file=file,
        scope=scope(root),
        lists=named_lists(root, "lists"),
        note=text(root, "note"),
        specs={
            str(name): VehicleSpec(
                _good(node, specs[name].unit if name in specs else "", findings),
                text(node, "source"),
            )
            for name, node in maps_by_name(map_(root, "specs"))
        },
        connectors={
            str(id_): connector(id_, node, findings)
            for id_, node in maps_by_name(map_(root, "connectors"))
        },
        fuses={str(id_): _fuse(id_, node) for id_, node in maps_by_name(map_(root, "fuses"))},
        torques={str(id_): _torque(id_, node) for id_, node in maps_by_name(map_(root, "torques"))},
        source=named_texts(root, "source"),
    )


def _fuse(id_: Text, node: Map) -> Fuse:
    return Fuse(id_, the_text(node, "box"), the_number(node, "amps"), text(node, "feeds"))


def _torque(id_: Text, node: Map) -> Torque:
    return Torque(id_, the_number(node, "Nm"), text(node, "note"), text(node, "source"))
