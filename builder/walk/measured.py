"""A check of a walk as a reader of the story or the customer's sheet sees it.

In: a step as it was taken, the tables, the library for names. Out: a `MeasuredCheck`: what was
asked, what was found, its readings with their limits. Nothing is in it that isn't in the record.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace
from decimal import Context, Decimal

from builder.graph.runs import with_values
from builder.model.library import Library
from builder.walk.answered import NOTHING_SHOWN
from builder.walk.job_details import BLANK
from builder.walk.job_state import RecordedReading, RecordedStep
from builder.walk.limit_text import is_within, limit_text, with_unit
from builder.walk.rows import CutPair
from builder.walk.spec_ranges import good_ranges
from builder.walk.steps_taken import StepTaken
from builder.walk.to_fill import OTHER
from builder.walk.tree_rows import WalkStepRow
from builder.walk.walk_tables import WalkTables
from builder.wording.bay_shorthand import written_out
from builder.wording.plain_answer import plain_answer
from builder.wording.sentences import capitalized
from builder.wording.vehicle_words import part_name

LEAST_DIGITS = 2  # of a reading in another unit, enough to hold against its limit
MOST_DIGITS = 4


@dataclass(frozen=True, slots=True)
class MeasuredValue:
    """One reading: `limit` is what is good, "" where that isn't known."""

    name: str  # "" where a check has only one
    text: str  # with its unit
    limit: str
    is_out: bool  # out of the limit


@dataclass(frozen=True, slots=True)
class MeasuredCheck:
    """A check that was answered."""

    inside: str
    step: str
    asked: str  # as the tree asks it
    result: str
    item: str = ""  # of the list that the step goes through
    means: str = ""
    values: tuple[MeasuredValue, ...] = ()
    stated: bool = False  # known before, not measured on this walk
    told: bool = False  # told or looked up, not seen on the vehicle
    too_close: bool = False
    earlier: bool = False  # proved earlier on this walk, not run again
    parts: tuple[str, ...] = ()  # of evidence, what the result stands for if not one thing
    asks_which: bool = True  # a pen says which of the parts it was
    seen: str = ""  # in the tech's own words
    wrote: tuple[tuple[str, str], ...] = ()  # figures noted beside the answer
    unwritten: tuple[str, ...] = ()  # of evidence, what was to be written down and wasn't
    inner: tuple[
        "MeasuredCheck", ...
    ] = ()  # of the procedure that found the result, in their order

    @property
    def is_out(self) -> bool:
        """Whether a reading is out of its limits."""
        return any(value.is_out for value in self.values)


def measured_check(tables: WalkTables, taken: StepTaken, library: Library) -> MeasuredCheck:
    """Return a check in words."""
    entry, row = taken.entry, tables[taken.entry.inside]["steps"][taken.entry.step]
    filled = named_values(taken.frame.filled, library)
    good = good_ranges(tables, taken.before, row)
    return MeasuredCheck(
        inside=entry.inside,
        step=entry.step,
        asked=with_values(row["text"], filled),
        item=entry.item,
        result=with_values(plain_answer(entry.result, _answers(row)), filled),
        means=with_values(entry.means, filled),
        values=tuple(_value(name, one, good.get(name)) for name, one in entry.readings.items()),
        stated=entry.stated,
        told=row.get("told", False),
        too_close=entry.too_close,
        earlier=bool(entry.earlier),
        wrote=tuple(
            (name, written_out(text)) for name, text in entry.wrote.items() if "DTC" not in name
        ),
    )


def _answers(row: WalkStepRow) -> list[str]:
    """Return the answers of a check without readings."""
    return [] if row.get("readings") else [one["text"] for one in row.get("results", ())]


def named_values(filled: Mapping[str, str], library: Library) -> dict[str, str]:
    """Return what fills a text, with modules and parts by their names instead of their IDs."""
    return {name: _named_value(name, value, library) for name, value in filled.items()}


def _named_value(name: str, value: str, library: Library) -> str:
    """Name a value; what was only called `other` is left to be filled in by hand."""
    if value == OTHER:
        return f"{BLANK} ({name})"
    is_known = value in library.modules or value in library.parts
    return part_name(value, library) if is_known else value


def asked_words(text: str) -> str:
    """Return what was asked or measured: `Charging voltage at the battery posts`."""
    return capitalized(text.removeprefix("Measure ").removeprefix("the "))


def legible_step(entry: RecordedStep) -> RecordedStep:
    """Return a step with its readings as precise as they were typed."""
    readings = {
        name: replace(reading, value=_legible(reading)) for name, reading in entry.readings.items()
    }
    return replace(entry, readings=readings)


def _legible(reading: RecordedReading) -> str:
    """Return the value; one of another unit, or computed, has digits that nobody measured."""
    if reading.typed.endswith(reading.unit) or not reading.value.replace(".", "").isdigit():
        return reading.value
    typed = sum(one.isdigit() for one in reading.typed.lstrip("-0. ")) or MOST_DIGITS
    digits = Context(prec=max(LEAST_DIGITS, min(typed, MOST_DIGITS)))
    return f"{digits.plus(Decimal(reading.value)):f}"


def _is_of_another_unit(reading: RecordedReading) -> bool:
    """Whether a reading was typed in a unit that isn't that of its limits: `0.001 in` of mm."""
    has_unit = re.search(r"[^\d\s.,+-]", reading.typed)
    is_number = reading.value.replace(".", "").removeprefix("-").isdigit()
    return bool(has_unit) and not reading.typed.endswith(reading.unit) and is_number


def _value(name: str, reading: RecordedReading, good: CutPair | None) -> MeasuredValue:
    text = with_unit(_legible(reading), reading.unit)
    if reading.unit and _is_of_another_unit(reading):
        text = f"{reading.typed} ({text})"
    if good is None or reading.value == NOTHING_SHOWN:
        return MeasuredValue(name, reading.value if good else text, "", False)
    is_out = not is_within(reading.value, good)
    return MeasuredValue(name, text, limit_text(good, reading.unit), is_out)
