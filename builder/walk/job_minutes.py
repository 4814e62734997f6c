"""The time of a job against its estimate.

In: the tables, the steps as they were taken, the estimated hours of the repair. Out: lines; where
the record has no times there is a blank to write them in.
"""

from collections.abc import Callable, Sequence
from decimal import ROUND_HALF_UP, Decimal

from builder.model.shop import Shop
from builder.walk.diagnosis import before_repair
from builder.walk.job_state import JobState
from builder.walk.known_words import own_words
from builder.walk.repair_tests import tests_of_repair
from builder.walk.steps_taken import StepTaken
from builder.walk.walk_tables import WalkTables
from builder.wording.day_text import clock_text

BLANK = "________"
SIX = Decimal(6)  # minutes in a tenth of an hour
WELL_OVER = Decimal("0.2")  # hours that nobody asks about; more has a reason


def minutes_lines(
    tables: WalkTables, state: JobState, taken: Sequence[StepTaken], hours: str, shop: Shop
) -> list[str]:
    """Return start and end, and hands-on time beside what was planned; "" hours are not known.

    A repair that ran well over its estimate has the tech's reason, or a blank for it.
    """
    before = before_repair(state, taken)
    after = taken[len(before) :]
    planned = sum((_planned(tables, one) for one in before), Decimal(0))
    # All of it in minutes alone: the rows are booked, and their tenths need not add up to its own.
    lines = [f"{_from_to(state, taken, shop)}; hands-on {_clock(taken, minutes_text)}"]
    plan = f"{minutes_and_hours(planned)} planned" if planned else ""
    lines.append("; ".join(filter(None, (f"Diagnosis: {_clock(before, minutes_and_hours)}", plan))))
    if after:
        row = f"Repair and verification: {_clock(after, minutes_and_hours)}"
        lines.append("; ".join([row, *([f"{hours} h on the estimate"] if hours else [])]))
    own = own_words(state).get("time")
    if own or is_over_estimate(state, taken, hours):
        lines.append(f"Why it took longer: {own or BLANK * 3}")
    return lines


def is_over_estimate(state: JobState, taken: Sequence[StepTaken], hours: str) -> bool:
    """Whether repair and verification took well over what the customer was told, in hours."""
    after = (one.entry for one in tests_of_repair(state, taken) if one.entry.event >= 0)
    minutes = sum(entry.minutes or 0 for entry in after)
    return bool(hours) and Decimal(minutes) / 60 - Decimal(hours) > WELL_OVER


def minutes_text(minutes: Decimal) -> str:
    """Write minutes alone."""
    return f"{minutes.normalize():f} min"


def minutes_and_hours(minutes: Decimal) -> str:
    """Write minutes with the tenths of an hour in which labor is booked, rounded half up.

    The same minutes are the same hours on every paper, whatever stands beside them.
    """
    tenths = (minutes / SIX).quantize(Decimal(1), ROUND_HALF_UP)
    return minutes_text(minutes) + (f" ({tenths.scaleb(-1)} h)" if tenths else "")


def _from_to(state: JobState, taken: Sequence[StepTaken], shop: Shop) -> str:
    """Return when the job began and when its last step was done, by the clock of the shop."""
    times = [one.entry.at for one in taken if one.entry.at]
    started = next((event.at for event in state.events if event.at), "")
    start, end = clock_text(started, shop), clock_text(times[-1] if times else "", shop)
    return f"Started {start or BLANK}, ended {end or BLANK}"


def _planned(tables: WalkTables, taken: StepTaken) -> Decimal:
    row = tables[taken.entry.inside]["steps"][taken.entry.step]
    return Decimal(row.get("minutes", 0))


def _clock(taken: Sequence[StepTaken], written: Callable[[Decimal], str]) -> str:
    """Write the minutes that steps took; a blank where none was timed."""
    minutes = [one.entry.minutes for one in taken if one.entry.event >= 0]
    timed = [one for one in minutes if one is not None]
    if not timed:
        return f"{BLANK} {'h' if written is minutes_and_hours else 'min'}"
    partly = " (not all steps timed)" if len(timed) < len(minutes) else ""
    return f"{written(Decimal(sum(timed)))}{partly}"
