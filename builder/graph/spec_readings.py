"""Readings that name a spec, with all that the spec or the vehicle says of them.

In: a `Tree`, the shop's specs, and the vehicle where it is known. Out: the tree with the unit, span
and limits of every such reading: the one function that rules, pages, prints and the walk ask.

Where the good range is known, `below spec`, `within spec` and `above spec` become ranges. Where it
is to be looked up, or depends on a load that isn't known yet, they stay phrases.
"""

from collections.abc import Mapping
from dataclasses import replace
from decimal import Decimal

from builder.model.checks import Check, Reading, Result
from builder.model.figures import NOTHING_SHOWN
from builder.model.ranges import BOTTOM, TOP, Range, between
from builder.model.text import Number, Text
from builder.model.tree import Step, Tree
from builder.model.vehicle_data import Good, LimitShape, Spec, Vehicle

Specs = Mapping[str, Spec]
WORDS_OF = {
    LimitShape.BAND: ("below spec", "within spec", "above spec"),
    LimitShape.AT_MOST: ("within spec", "above spec"),
    LimitShape.AT_LEAST: ("below spec", "within spec"),
}


def with_specs(tree: Tree, specs: Specs, vehicle: Vehicle | None = None) -> Tree:
    """Return the tree with its spec readings filled in; a tree without any as it is."""
    filled = {
        name: _filled(step, step.body, specs, vehicle)
        for name, step in tree.steps.items()
        if isinstance(step.body, Check) and any(reading.spec for reading in step.body.readings)
    }
    return replace(tree, steps={**tree.steps, **filled}) if filled else tree


def _filled(step: Step, check: Check, specs: Specs, vehicle: Vehicle | None) -> Step:
    load = load_of(step)
    readings = tuple(_reading(one, specs, vehicle, load) for one in check.readings)
    by_name = {reading.name: reading for reading in readings}
    results = tuple(_result(one, by_name, specs, vehicle, load) for one in check.results)
    return replace(step, body=replace(check, readings=readings, results=results))


def load_of(step: Step) -> str:
    """Return the current of the load that a step needs, such as `9 A`, or nothing."""
    return next((str(need.value) for need in step.needs if need.condition == "loaded"), "")


def good_of(spec: Spec, vehicle: Vehicle | None, load: str) -> Good:
    """Return what is good: on this vehicle, else on any; at this load where that counts."""
    own = vehicle.specs.get(spec.id) if vehicle else None
    good = own.good if own else spec.good
    return good.by_load.get(load, good)


def words_for(spec: Spec, vehicle: Vehicle | None = None, load: str = "") -> tuple[str, ...]:
    """Return the results that a reading can have, without `none`."""
    good = good_of(spec, vehicle, load)
    if good.range is None:
        return WORDS_OF[good.shape]
    domain = between(spec.low, spec.high)
    spans = {word: span_of(word, good.range) for word in WORDS_OF[LimitShape.BAND]}
    return tuple(word for word, span in spans.items() if not span.intersection(domain).empty)


def span_of(word: str, good: Range) -> Range:
    """Return the readings that a word of a spec stands for."""
    if word == "below spec":
        return Range(BOTTOM, good.low)
    return good if word == "within spec" else Range(good.high, TOP)


def _reading(reading: Reading, specs: Specs, vehicle: Vehicle | None, load: str) -> Reading:
    spec = specs.get(str(reading.spec)) if reading.spec else None
    if reading.spec is None:
        return reading
    if spec is None or good_of(spec, vehicle, load).range is None:
        words = words_for(spec, vehicle, load) if spec else WORDS_OF[LimitShape.BAND]
        one_of = tuple(Text(word, reading.at) for word in words)
        return replace(
            reading, one_of=one_of, high=Decimal(len(one_of) - 1), resolution=Number("1")
        )
    return replace(
        reading,
        unit=spec.unit,
        low=spec.low,
        high=spec.high,
        resolution=spec.resolution,
        origin=spec.origin,
    )


def _result(
    result: Result,
    readings: Mapping[str, Reading],
    specs: Specs,
    vehicle: Vehicle | None,
    load: str,
) -> Result:
    spans = {
        name: _span(str(word), readings[name], specs, vehicle, load)
        for name, word in result.compares.items()
        if word != NOTHING_SHOWN
    }
    known = {name: span for name, span in spans.items() if span is not None}
    return replace(result, ranges={**result.ranges, **known}) if known else result


def _span(
    word: str, reading: Reading, specs: Specs, vehicle: Vehicle | None, load: str
) -> Range | None:
    if reading.one_of:
        words = [str(phrase) for phrase in reading.one_of]
        place = Decimal(words.index(word)) if word in words else None
        return between(place, place) if place is not None else None
    good = good_of(specs[str(reading.spec)], vehicle, load)
    return span_of(word, good.range) if good.range else None
