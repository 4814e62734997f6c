"""Ways to break the rules of readings: limits, units, conditions, instruments.

In: a sound tree. Out: mutants of it.
"""

import re
from collections.abc import Iterator
from decimal import Decimal

from builder.model.ranges import BOTTOM, TOP, Range
from builder.model.tree import Check, Reading, Result
from builder.trade.units import convert, same_kind

from .sound import Mutant, Sound


def _single(sound: Sound) -> Iterator[tuple[Check, int, Result]]:
    """Yield the results of single readings whose upper end is the lower end of the next."""
    for _, check in sound.checks:
        if len(check.readings) == 1 and not check.computed and not check.readings[0].name:
            for result in check.results:
                side = result.ranges[""]
                above = [one for one in check.results if one.ranges[""].low == side.high]
                if side.high not in (TOP, BOTTOM) and above and side.high.value.is_finite():
                    yield check, above[0].said.at.line, result


def limit_shifted(sound: Sound) -> Iterator[Mutant]:
    """Pull the upper end of a range down by ten steps of the reading, so that a gap opens."""
    for check, neighbour, result in _single(sound):
        yield from _moved(sound, check, neighbour, result, -10)


def limit_pushed(sound: Sound) -> Iterator[Mutant]:
    """Push the upper end of a range up by ten steps, into the next range."""
    for check, neighbour, result in _single(sound):
        yield from _moved(sound, check, neighbour, result, +10)


def _moved(
    sound: Sound, check: Check, neighbour: int, result: Result, steps: int
) -> Iterator[Mutant]:
    side, fine = result.ranges[""], check.readings[0].resolution or Decimal("0.1")
    end = side.high.value + steps * fine
    if end > max(side.low.value, check.readings[0].low) and end < check.readings[0].high:
        head, _, _ = result.said.rpartition(" ")
        yield sound.replaced(result.said.at, f"{head} {end:f}", neighbour)


def ends_swapped(sound: Sound) -> Iterator[Mutant]:
    """Write the ends of a range in the wrong order."""
    for _, check in sound.checks:
        for result in check.results:
            low, to, high = result.said.partition(" to ")
            if to and "" in result.ranges and " " not in low + high:
                yield sound.replaced(result.said.at, f"{high} to {low}")


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


def unit_misspelt(sound: Sound) -> Iterator[Mutant]:
    """Write a unit that does not exist."""
    for _, check in sound.checks:
        for reading in check.readings:
            if not reading.one_of:
                yield sound.replaced(reading.unit.at, f'"{reading.unit}zz"')


def origin_removed(sound: Sound) -> Iterator[Mutant]:
    """Take the origin out of a reading with limits."""
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
    """Take the conditions out of a check with limits."""
    for step, check in sound.checks:
        numbers = any(not one.one_of for one in check.readings)
        if step.when and numbers and not step.same_as:
            yield sound.without(step.when[0].at, "when", step.text.at.line)


def power_left_on(sound: Sound) -> Iterator[Mutant]:
    """Let a resistance be measured with nothing said but the key off."""
    for step, check in sound.checks:
        ohms = any(same_kind(one.unit, "ohm") for one in check.readings if not one.one_of)
        if (
            ohms
            and step.when
            and not step.same_as
            and step.when[0].at.line == step.when[-1].at.line
        ):
            at = step.when[0].at._replace(end_column=step.when[-1].at.end_column)
            yield sound.replaced(at, "key off", step.text.at.line)


def digit_added(sound: Sound) -> Iterator[Mutant]:
    """Write a limit finer than the reading goes, as if copied from a better meter."""
    for limit in sound.limits:
        reading = next((one for one in limit.check.readings if one.name == limit.reading), None)
        high = limit.side.high.value
        if reading and reading.resolution and not reading.one_of and high < reading.high:
            figure = f"{high + reading.resolution / 10:f}"
            finer = re.sub(r"-?[\d.]+$", figure, limit.said)
            yield sound.replaced(limit.said.at, finer, limit.result.said.at.line)


def resolution_too_fine(sound: Sound) -> Iterator[Mutant]:
    """Say that a reading goes in steps that no tool of the step shows."""
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


def end_left_open(sound: Sound) -> Iterator[Mutant]:
    """Write `at most 5` or `at least -5` where `-5 to 5` was meant."""
    for limit in sound.limits:
        low, to, high = limit.said.partition(" to ")
        if to and limit.side.takes(Decimal(0)) and _can_be_negative(limit.check, limit.reading):
            if limit.side.high.value:
                upper = high if high.startswith("below") else f"at most {high}"
                yield sound.replaced(limit.said.at, upper, limit.result.said.at.line)
            if limit.side.low.value:
                yield sound.replaced(limit.said.at, f"at least {low}", limit.result.said.at.line)


def _can_be_negative(check: Check, name: str) -> bool:
    if any(one.low < 0 for one in check.readings if one.name == name):
        return True
    sides = [result.ranges[name] for result in check.results if name in result.ranges]
    return any(-Decimal("Infinity") < side.low.value < 0 for side in sides)


def lead_reversed(sound: Sound) -> Iterator[Mutant]:
    """Let a reading go below zero, as the meter can, and leave its open ranges as they are."""
    for _, check in sound.checks:
        for reading in check.readings:
            sides = [
                (result.said.at.line, result.ranges[reading.name])
                for result in check.results
                if reading.name in result.ranges
            ]
            over = [line for line, side in sides if _open_over_zero(side)]
            line = sound.text.split("\n")[reading.at.line - 1]
            if over and not reading.one_of and "from: 0," in line:
                start = line.index("from: 0,") + 1
                at = reading.at._replace(
                    end_line=reading.at.line, column=start, end_column=start + len("from: 0,")
                )
                mutant = sound.replaced(at, "from: -16,", *over)
                yield Mutant(mutant.text, frozenset(over))


def _open_over_zero(side: Range) -> bool:
    return side.low == BOTTOM and side.high != TOP and side.high.value > 0


def rest_not_written_out(sound: Sound) -> Iterator[Mutant]:
    """Write `otherwise` in place of the last of several ranges."""
    for _, check in sound.checks:
        last = check.results[-1]
        if last.ranges and all(last.ranges):
            yield sound.flattened(last.said.at, "result: otherwise")


def load_left_out(sound: Sound) -> Iterator[Mutant]:
    """Let a voltage drop be measured with nothing said but the key on."""
    for step, check in sound.checks:
        drop = step.how_to == "voltage-drop" or "drop" in step.text.lower()
        volts = any(same_kind(one.unit, "V") for one in check.readings if not one.one_of)
        on_one_line = step.when and step.when[0].at.line == step.when[-1].at.line
        if drop and volts and on_one_line and not step.same_as:
            at = step.when[0].at._replace(end_column=step.when[-1].at.end_column)
            yield sound.replaced(at, "key on", step.text.at.line)


def name_in_sum_misspelt(sound: Sound) -> Iterator[Mutant]:
    """Compute with a reading that the check does not have."""
    for _, check in sound.checks:
        for sum_ in check.computed:
            for reading in check.readings:
                words = sum_.expression.split()
                if reading.name in words and sound.is_written(sum_.expression):
                    wrong = [f"{one}zz" if one == reading.name else one for one in words]
                    yield sound.replaced(sum_.expression.at, " ".join(wrong))


def figure_too_fine(sound: Sound) -> Iterator[Mutant]:
    """Write a limit, or the steps of a reading, finer than anything in hand can show."""
    yield from digit_added(sound)
    yield from resolution_too_fine(sound)


def over_zero(sound: Sound) -> Iterator[Mutant]:
    """Leave a range open over zero, from either side of the mistake."""
    yield from end_left_open(sound)
    yield from lead_reversed(sound)
