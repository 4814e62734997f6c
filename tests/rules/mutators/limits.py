"""Mutators for the rules of limits: ranges with gaps, overlaps, open ends or hidden bands.

In: a sound tree. Out: mutants of it.
"""

from collections.abc import Iterator
from decimal import Decimal

from builder.model.checks import Check, Result
from builder.model.ranges import BOTTOM, TOP, Range

from .sound import Mutant, Sound


def _single(sound: Sound) -> Iterator[tuple[Check, int, Result]]:
    """Yield the results of single readings whose upper end is the lower end of the next."""
    for _, check in sound.checks:
        if len(check.readings) == 1 and not check.computed and not check.readings[0].name:
            for result in check.results:
                side = result.ranges[""]
                above = [one for one in check.results if one.ranges[""].low == side.high]
                if side.high not in (TOP, BOTTOM) and above and side.high.value.is_finite():
                    yield check, above[0].text.at.line, result


def limit_shifted(sound: Sound) -> Iterator[Mutant]:
    """Move the upper end of a range down by ten steps of the reading, so that a gap opens."""
    for check, next_line, result in _single(sound):
        yield from _moved(sound, check, next_line, result, -10)
    yield from _moved_of_several(sound, -10)


def limit_pushed(sound: Sound) -> Iterator[Mutant]:
    """Move the upper end of a range up by ten steps, into the next range."""
    for check, next_line, result in _single(sound):
        yield from _moved(sound, check, next_line, result, +10)
    yield from _moved_of_several(sound, +10)


def _moved(
    sound: Sound, check: Check, next_line: int, result: Result, steps: int
) -> Iterator[Mutant]:
    side, resolution = result.ranges[""], check.readings[0].resolution or Decimal("0.1")
    end = side.high.value + steps * resolution
    if end > max(side.low.value, check.readings[0].low) and end < check.readings[0].high:
        head, _, _ = result.text.rpartition(" ")
        yield sound.replaced(result.text.at, f"{head} {end:f}", next_line)


def _moved_of_several(sound: Sound, steps: int) -> Iterator[Mutant]:
    """Do the same to one reading of several; the fault may be at any of the results."""
    for limit in sound.limits:
        reading = next((one for one in limit.check.readings if one.name == limit.reading), None)
        if not reading or reading.one_of or not reading.name or limit.check.several:
            continue
        side = limit.side
        end = side.high.value + steps * (reading.resolution or Decimal("0.1"))
        if max(side.low.value, reading.low) < end < reading.high != side.high.value:
            head, _, _ = limit.text.rpartition(" ")
            results = (result.text.at.line for result in limit.check.results)
            yield sound.replaced(limit.text.at, f"{head} {end:f}", *results)


def ends_swapped(sound: Sound) -> Iterator[Mutant]:
    """Write the ends of a range in the wrong order."""
    for limit in sound.limits:
        low, to, high = limit.text.partition(" to ")
        if to and " " not in low + high and low != high:
            yield sound.replaced(limit.text.at, f"{high} to {low}", limit.result.text.at.line)


def over_zero(sound: Sound) -> Iterator[Mutant]:
    """Leave a range open past zero, by its end or by its reading."""
    yield from end_left_open(sound)
    yield from lead_reversed(sound)


def end_left_open(sound: Sound) -> Iterator[Mutant]:
    """Write `at most 5` or `at least -5` for `-5 to 5`."""
    for limit in sound.limits:
        low, to, high = limit.text.partition(" to ")
        if to and limit.side.contains(Decimal(0)) and _can_be_negative(limit.check, limit.reading):
            if limit.side.high.value:
                upper = high if high.startswith("below") else f"at most {high}"
                yield sound.replaced(limit.text.at, upper, limit.result.text.at.line)
            if limit.side.low.value:
                yield sound.replaced(limit.text.at, f"at least {low}", limit.result.text.at.line)


def _can_be_negative(check: Check, name: str) -> bool:
    if any(one.low < 0 for one in check.readings if one.name == name):
        return True
    sides = [result.ranges[name] for result in check.results if name in result.ranges]
    return any(-Decimal("Infinity") < side.low.value < 0 for side in sides)


def lead_reversed(sound: Sound) -> Iterator[Mutant]:
    """Extend a reading below zero, as the meter can, and leave its open ranges as they are."""
    for _, check in sound.checks:
        for reading in check.readings:
            sides = [
                (result.text.at.line, result.ranges[reading.name])
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
            yield sound.flattened(last.text.at, "result: otherwise")
