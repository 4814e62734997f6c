"""The readings that were out of limits before a repair and that nobody took again after it.

In: the steps as they were taken, the library. Out: a line. An auditor looks for the good reading
beside each bad one; where there is none, the paper says so itself.
"""

from collections.abc import Iterator, Sequence

from builder.model.library import Library
from builder.walk.job_state import JobState
from builder.walk.measured import MeasuredValue, measured_check
from builder.walk.repair_tests import tests_of_repair
from builder.walk.steps_taken import StepTaken
from builder.walk.told import row_of
from builder.walk.walk_tables import WalkTables
from builder.wording.finding_text import finding_label
from builder.wording.sentences import uncapitalized

Quantity = tuple[str, ...]  # what a reading is of


def unread_lines(
    tables: WalkTables, state: JobState, taken: Sequence[StepTaken], library: Library
) -> list[str]:
    """Return what was out of limits as last read before the repair, and not read again.

    None before the repair is done: then every test is still to come.
    """
    after = tests_of_repair(state, taken)
    if not any(one.entry.kind == "verify" for one in after):
        return []
    before = taken[: len(taken) - len(after)]
    last = {what: words for one in before for what, words in _readings(tables, one, library)}
    again = {what for one in after for what, _ in _readings(tables, one, library)}
    left = [words for what, words in last.items() if words and what not in again]
    return [f"Not measured again: {'; '.join(left)}"] if left else []


def _readings(
    tables: WalkTables, one: StepTaken, library: Library
) -> Iterator[tuple[Quantity, str]]:
    """Yield each reading of a step; in words if it is out of its limits, else ""."""
    if one.entry.kind != "check" or one.entry.stated or not one.entry.readings:
        return
    check, specs = measured_check(tables, one, library), row_of(tables, one.frame).get("specs", {})
    for value in check.values:
        filled = map(str, sorted(one.frame.filled.items()))
        here = (one.entry.inside, one.entry.step, value.name, *filled)
        of = (specs[value.name],) if value.name in specs else here
        yield (*of, check.item), _words(check.asked, value) if value.is_out else ""


def _words(asked: str, value: MeasuredValue) -> str:
    name = f", {value.name}" if value.name else ""
    return f"{uncapitalized(finding_label(asked))}{name} ({value.text} before)"
