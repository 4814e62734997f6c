"""The pins and fuses of a step on one vehicle, in words.

In: a step, the library, the vehicle. Out: where the step works, with connector, pin, wire and fuse
as the vehicle's file has them. A check by a procedure gets the pins that the procedure asks for.
"""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from builder.graph.runs import procedure_of, values_of, with_values
from builder.graph.vehicle_lookup import PinPlace, fuses_at, pins_at
from builder.model.checks import Check
from builder.model.library import Library
from builder.model.text import Text
from builder.model.tree import Step, Where
from builder.model.vehicle_data import Vehicle
from builder.wording.connector_words import connector_name, fuse_text, pin_text
from builder.wording.sentences import uncapitalized


def where_on_vehicle(step: Step, library: Library, vehicle: Vehicle) -> Where | None:
    """Return where a step works, in words where the vehicle's file knows it."""
    places = list(_places(step, library, {}))
    every = (pin for one in places for pin in pins_at(one, vehicle))
    pins = list({(one.connector.id, one.pin.number): one for one in every}.values())
    fuses = dict.fromkeys(fuse for one in places for fuse in fuses_at(one, vehicle))
    told = {pin.fuse for pin in pins}
    words = [*_by_connector(pins, library), *(fuse_text(one) for one in fuses if one not in told)]
    if not words:
        return step.where
    if step.where and (location := _location(pins)):
        words.append(location)
    where = step.where or Where(step.at)
    return replace(where, phrase=Text("; ".join(words), where.at))


def _places(
    step: Step, library: Library, values: Mapping[str, str], inside: tuple[str, ...] = ()
) -> Iterator[Where]:
    """Yield where a step works, and the steps of the procedure that it runs."""
    if step.where:
        yield _filled(step.where, values)
    procedure = procedure_of(step, library.procedures)
    if procedure and procedure.name not in inside:
        assert isinstance(step.body, Check)
        handed = values_of(step.body, procedure).items()
        inner = {name: with_values(value, values) for name, value in handed}
        for one in procedure.tree.steps.values():
            yield from _places(one, library, inner, (*inside, procedure.name))


def _filled(where: Where, values: Mapping[str, str]) -> Where:
    def of(text: Text | None) -> Text | None:
        return Text(with_values(str(text), values), text.at) if text else None

    pins = tuple(Text(with_values(str(pin), values), pin.at) for pin in where.pins)
    return replace(where, part=of(where.part), fuse=of(where.fuse), pins=pins)


def _by_connector(pins: list[PinPlace], library: Library) -> Iterator[str]:
    """Yield the pins of each connector, in the order in which they are asked for."""
    for connector in dict.fromkeys(one.connector.id for one in pins):
        of_it = [one for one in pins if one.connector.id == connector]
        words = "; ".join(pin_text(one.pin, one.fuse) for one in of_it)
        yield f"{connector_name(of_it[0].connector, library)} {words}"


def _location(pins: list[PinPlace]) -> str:
    """Return where the one connector is; nothing where there are several."""
    where = {str(one.connector.where or "") for one in pins}
    return uncapitalized(where.pop()) if len(where) == 1 else ""
