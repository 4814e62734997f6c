"""A check of a walk as a reader of the story or the customer's sheet sees it.

In: a step as it was taken, the tables, the library for names. Out: a `MeasuredCheck`: what was
asked, what was found, its readings with their limits. Nothing is in it that isn't in the record.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Context, Decimal

from builder.graph.runs import with_values
from builder.model.library import Library
from builder.walk.answered import NOTHING_SHOWN
from builder.walk.job_state import RecordedReading
from builder.walk.limit_text import is_within, limit_text, with_unit
from builder.walk.rows import CutPair
from builder.walk.spec_ranges import good_ranges
from builder.walk.steps_taken import StepTaken
from builder.walk.walk_tables import WalkTables
from builder.wording.sentences import capitalized
from builder.wording.vehicle_words import part_name

OUT = "OUT OF LIMITS"
FOUR_DIGITS = Context(prec=4)
_SPEC_RESULTS = {
    "below spec": "below its limits",
    "within spec": "within its limits",
    "above spec": "above its limits",
    "none": "nothing there",
}


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
    asked: str
    result: str
    means: str = ""
    values: tuple[MeasuredValue, ...] = ()
    stated: bool = False  # known before, not measured on this walk
    too_close: bool = False
    earlier: bool = False  # proved earlier on this walk, not run again

    @property
    def is_out(self) -> bool:
        """Whether a reading is out of its limits."""
        return any(value.is_out for value in self.values)


def measured_check(tables: WalkTables, taken: StepTaken, library: Library) -> MeasuredCheck:
    """Return a check in words."""
    entry, row = taken.entry, tables[taken.entry.inside]["steps"][taken.entry.step]
    filled = named_values(taken.frame.filled, library)
    good = good_ranges(tables, taken.before, row)
    item = f" ({entry.item})" if entry.item else ""
    return MeasuredCheck(
        inside=entry.inside,
        step=entry.step,
        asked=asked_words(with_values(row["text"], filled)) + item,
        result=with_values(entry.result, filled),
        means=with_values(entry.means, filled),
        values=tuple(_value(name, one, good.get(name)) for name, one in entry.readings.items()),
        stated=entry.stated,
        too_close=entry.too_close,
        earlier=bool(entry.earlier),
    )


def named_values(filled: Mapping[str, str], library: Library) -> dict[str, str]:
    """Return what fills a text, with modules and parts by their names instead of their IDs."""
    return {
        name: part_name(value, library)
        if value in library.modules or value in library.parts
        else value
        for name, value in filled.items()
    }


def asked_words(text: str) -> str:
    """Return what was asked or measured: `Charging voltage at the battery posts`."""
    return capitalized(text.removeprefix("Measure ").removeprefix("the "))


def check_line(check: MeasuredCheck) -> str:
    """Write a check in one line, as a customer reads it."""
    values = [
        _named(value) + (f" (should be {value.limit})" if value.limit else "")
        for value in check.values
    ]
    told = "as told to us, not measured here" if check.stated else ""
    return _line(check, values, check.means, told)


def evidence_line(check: MeasuredCheck) -> str:
    """Write a check for the trade: readings, limits, and a mark where one is out of them."""
    values = [
        _named(value)
        + (f", limit {value.limit}" if value.limit else "")
        + (f" [{OUT}]" if value.is_out else "")
        for value in check.values
    ]
    notes = {
        "stated, not measured": check.stated,
        "close to the limit for this instrument": check.too_close,
        "proved earlier in this job": check.earlier,
    }
    return _line(check, values, check.means, *(note for note, holds in notes.items() if holds))


def _line(check: MeasuredCheck, values: list[str], *notes: str) -> str:
    result = _SPEC_RESULTS.get(check.result, check.result)
    is_told = any(value.limit for value in check.values)
    words = "; ".join([*values, *([] if is_told else [result])])
    between = " " if check.asked.endswith("?") else ": "
    more = "".join(f" ({note})" for note in notes if note)
    return f"{check.asked}{between}{capitalized(words)}{more}"


def _named(value: MeasuredValue) -> str:
    return f"{value.name} {value.text}".strip()


def _legible(reading: RecordedReading) -> str:
    """Return the value; one that was typed in another unit has digits that nobody measured."""
    if reading.typed.endswith(reading.unit) or not reading.value.replace(".", "").isdigit():
        return reading.value
    return f"{FOUR_DIGITS.plus(Decimal(reading.value)):f}"


def _value(name: str, reading: RecordedReading, good: CutPair | None) -> MeasuredValue:
    text = with_unit(_legible(reading), reading.unit)
    if good is None or reading.value == NOTHING_SHOWN:
        return MeasuredValue(name, reading.value if good else text, "", False)
    is_out = not is_within(reading.value, good)
    return MeasuredValue(name, text, limit_text(good, reading.unit), is_out)
