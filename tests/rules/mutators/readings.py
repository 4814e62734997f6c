"""Mutators for the rules of readings: units, conditions, instruments, calculations.

In: a sound tree. Out: mutants of it.
"""

import re
from collections.abc import Iterator
from decimal import Decimal

from builder.model.checks import Check, Reading
from builder.model.text import Position, Text
from builder.model.tree import Step
from builder.trade.units import convert, same_kind

from .sound import Mutant, Sound


def unit_of_another_kind(sound: Sound) -> Iterator[Mutant]:
    """Give a reading a unit that none of the step's tools reads."""
    for step, check in sound.checks:
        tools = [sound.library.tools.get(name) for name in step.tools]
        if not tools or any(tool is None or not tool.reads for tool in tools):
            continue
        reads = [one.unit for tool in tools if tool for one in tool.reads]
        for reading in check.readings:
            other = next(
                unit
                for unit in ("g/s", "lb-ft", "CCA")
                if not any(same_kind(unit, read) for read in reads)
            )
            if not reading.one_of and not check.computed:
                yield sound.replaced(reading.unit.at, other)


def unit_misspelled(sound: Sound) -> Iterator[Mutant]:
    """Write a unit that doesn't exist."""
    for _, check in sound.checks:
        for reading in check.readings:
            if not reading.one_of:
                yield sound.replaced(reading.unit.at, f'"{reading.unit}zz"')


def origin_removed(sound: Sound) -> Iterator[Mutant]:
    """Remove the origin of a reading with limits."""
    for _, check in sound.checks:
        for reading in check.readings:
            limited = any(reading.name in result.ranges for result in check.results)
            if reading.origin and limited and not reading.one_of:
                if reading.origin.at.line == reading.at.line:  # in braces, on one line
                    line = sound.text.split("\n")[reading.origin.at.line - 1]
                    start = line.rindex(", origin:", 0, reading.origin.at.column)
                    at = reading.origin.at._replace(column=start + 1)
                    yield sound.replaced(at, "", reading.at.line)
                else:
                    yield sound.without(reading.origin.at, "origin", reading.at.line)


def condition_removed(sound: Sound) -> Iterator[Mutant]:
    """Remove the conditions of a check with limits."""
    for step, check in sound.checks:
        numbers = any(not one.one_of for one in check.readings)
        named = sorted((*step.when, *(need.condition for need in step.needs)), key=_place)
        if named and numbers and not step.same_as:
            yield sound.without(named[0].at, "when", step.text.at.line)


def power_left_on(sound: Sound) -> Iterator[Mutant]:
    """Measure a resistance with no condition but the key off."""
    for step, check in sound.checks:
        ohms = any(same_kind(one.unit, "ohm") for one in check.readings if not one.one_of)
        if ohms and not step.same_as:
            yield from _left_in(sound, step, "key-off")


def load_left_out(sound: Sound) -> Iterator[Mutant]:
    """Measure a voltage drop with no condition but the key on."""
    for step, check in sound.checks:
        drop = step.how_to == "voltage-drop" or "drop" in step.text.lower()
        volts = any(same_kind(one.unit, "V") for one in check.readings if not one.one_of)
        if drop and volts and not step.same_as:
            yield from _left_in(sound, step, "key-on")


def _left_in(sound: Sound, step: Step, state: str) -> Iterator[Mutant]:
    """Name nothing but a state of the key, where all that is named is on one line."""
    named = sorted((*step.when, *(need.condition for need in step.needs)), key=_place)
    if named and named[0].at.line == named[-1].at.line:
        at = named[0].at._replace(end_column=named[-1].at.end_column)
        yield sound.replaced(at, state, step.text.at.line)


def _place(text: Text) -> Position:
    return text.at


def name_in_sum_misspelled(sound: Sound) -> Iterator[Mutant]:
    """Calculate with a reading that the check doesn't have."""
    for _, check in sound.checks:
        for computed in check.computed:
            for reading in check.readings:
                words = computed.expression.split()
                if reading.name in words and sound.is_written(computed.expression):
                    wrong = [f"{word}zz" if word == reading.name else word for word in words]
                    yield sound.replaced(computed.expression.at, " ".join(wrong))


def figure_too_fine(sound: Sound) -> Iterator[Mutant]:
    """Write a limit, or a resolution, finer than any tool of the step can show."""
    yield from digit_added(sound)
    yield from resolution_too_fine(sound)


def digit_added(sound: Sound) -> Iterator[Mutant]:
    """Write a limit finer than the reading's resolution, as if copied from a better meter."""
    for limit in sound.limits:
        reading = next((one for one in limit.check.readings if one.name == limit.reading), None)
        high = limit.side.high.value
        if reading and reading.resolution and not reading.one_of and high < reading.high:
            figure = f"{high + reading.resolution / 10:f}"
            finer = re.sub(r"-?[\d.]+$", figure, limit.text)
            yield sound.replaced(limit.text.at, finer, limit.result.text.at.line)


def resolution_too_fine(sound: Sound) -> Iterator[Mutant]:
    """Give a reading a resolution that no tool of the step shows."""
    for step, check in sound.checks:
        tools = [sound.library.tools[name] for name in step.tools]
        for reading in check.readings if all(tool.reads for tool in tools) else ():
            most = max((end for end in _ends(check, reading) if end.is_finite()), default=0)
            shown = [
                convert(one.resolution or 0, one.unit, reading.unit)
                for tool in tools
                for one in tool.reads
                if same_kind(one.unit, reading.unit)
                and convert(one.high, one.unit, reading.unit) >= most
            ]
            linear = reading.unit not in ("°C", "°F", "C", "F")
            if reading.resolution and not reading.one_of and linear and shown and all(shown):
                finer = float(min(shown)) / 10
                yield sound.replaced(reading.resolution.at, f"{finer:.9f}".rstrip("0").rstrip("."))


def _ends(check: Check, reading: Reading) -> list[Decimal]:
    """Return the ends of the ranges of a reading, or of the reading where it has none."""
    sides = [one.ranges[reading.name] for one in check.results if reading.name in one.ranges]
    return [end.value for side in sides for end in side] or [reading.low, reading.high]
