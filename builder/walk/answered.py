"""Which result an answer gives, and what is recorded of its readings.

In: the row of a check, its tools, an `Answer`. Out: an `Answered`, or a `Refused` that says what to
do instead.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import cast

from builder.walk.events import Answer
from builder.walk.follow import OutcomeState, ReadingOutcome, read_as
from builder.walk.job_state import RecordedReading, Refused
from builder.walk.rows import StepRow, ToolRow
from builder.walk.tree_rows import WalkStepRow

NOTHING_SHOWN = "nothing shown"


@dataclass(frozen=True, slots=True)
class Answered:
    """The result of a check, counted from 0, and its readings."""

    result: int
    readings: Mapping[str, RecordedReading] = field(default_factory=dict)
    too_close: bool = False


def answered(row: WalkStepRow, tools: Sequence[ToolRow], answer: Answer) -> Answered | Refused:
    """Return what an answer gives."""
    count = len(row.get("results", ()))
    if answer.result is not None and not 0 <= answer.result < count:
        return Refused(
            f"there is no result {answer.result}: this check has {count}, counted from 0"
        )
    filled = {name: text for name, text in answer.readings.items() if text.strip()}
    if filled:
        return _measured(row, tools, answer, filled)
    if answer.result is None:
        return Refused("the answer is missing: give a result, or a reading")
    if row.get("readings") and not answer.stated and not _is_empty(row, answer.result):
        return Refused(
            "the reading is missing: type it in, or mark the answer as stated and not measured"
        )
    if "by" in row and not answer.stated:
        return Refused("run the procedure, or mark the answer as stated and not measured")
    return Answered(answer.result)


def _is_empty(row: WalkStepRow, result: int) -> bool:
    """Whether a result says that nothing was shown."""
    return "none" in row["results"][result].get("places", {}).values()


def _measured(
    row: WalkStepRow, tools: Sequence[ToolRow], answer: Answer, filled: Mapping[str, str]
) -> Answered | Refused:
    if not row.get("readings"):
        return Refused("this check has no reading: give a result")
    if any(text.strip().lower() == NOTHING_SHOWN for text in filled.values()):
        return _nothing_shown(row, filled)
    outcome = read_as(cast("StepRow", row), tools, filled)
    match outcome.state:
        case OutcomeState.INVALID:
            return Refused("; ".join(_named(*pair) for pair in outcome.mistakes.items()))
        case OutcomeState.INCOMPLETE:
            return Refused(f"still to be read: {_missing(row, filled)}")
        case OutcomeState.NO_RESULT:
            return Refused("no result covers that: measure again, or choose none of these")
        case _:
            return _decided(row, answer, outcome, filled)


def _decided(
    row: WalkStepRow, answer: Answer, outcome: ReadingOutcome, filled: Mapping[str, str]
) -> Answered | Refused:
    texts = [row["results"][at]["text"] for at in outcome.fits]
    if answer.result is not None and answer.result not in outcome.fits:
        return Refused(f"that reads as `{'` or `'.join(texts)}`: measure again, or take that")
    too_close = outcome.state is OutcomeState.TOO_CLOSE
    if too_close and answer.result is None:
        return Refused(
            f"too close to call between `{'` and `'.join(texts)}`: measure again with a finer tool,"
            " or choose one"
        )
    result = outcome.fits[0] if answer.result is None else answer.result
    return Answered(result, _recorded(row, outcome, filled), too_close)


def _nothing_shown(row: WalkStepRow, filled: Mapping[str, str]) -> Answered | Refused:
    results = range(len(row["results"]))
    empty = next((at for at in results if _is_empty(row, at)), None)
    if empty is None:
        return Refused("no result here is `nothing shown`: check the leads, or can't test")
    return Answered(
        empty, {name: RecordedReading(NOTHING_SHOWN, "", text) for name, text in filled.items()}
    )


def _recorded(
    row: WalkStepRow, outcome: ReadingOutcome, filled: Mapping[str, str]
) -> dict[str, RecordedReading]:
    """Return the specs that were looked up, the readings, and what was computed from them."""
    unit_of_spec = row["readings"][0]["unit"]
    recorded = {
        name: RecordedReading(filled[name].strip(), unit_of_spec, filled[name].strip())
        for name in row.get("figure", ())
        if name in filled
    }
    for reading in row["readings"]:
        name = reading["name"]
        if name in filled:
            typed = filled[name].strip()
            value = typed if "phrases" in reading else _value_text(outcome.values[name])
            recorded[name] = RecordedReading(value, reading["unit"], typed)
    for computed in row["computed"]:
        name = computed["name"]
        if outcome.values.get(name):
            recorded[name] = RecordedReading(outcome.values[name], computed["unit"], "")
    return recorded


def _value_text(digits: str) -> str:
    return "OL" if digits == "Infinity" else digits


def _named(name: str, message: str) -> str:
    return f"{name}: {message}" if name else message


def _missing(row: WalkStepRow, filled: Mapping[str, str]) -> str:
    names = [*row.get("figure", ()), *(reading["name"] for reading in row["readings"])]
    return ", ".join(name or "the reading" for name in names if name not in filled)
