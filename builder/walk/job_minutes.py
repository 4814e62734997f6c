"""The time of a job against its estimate.

In: the tables, the steps as they were taken, the estimated hours of the repair. Out: lines; where
the record has no times there is a blank to write them in.
"""

from collections.abc import Sequence
from decimal import ROUND_HALF_UP, Decimal

from builder.model.shop import Shop
from builder.walk.diagnosis import before_repair
from builder.walk.job_state import JobState
from builder.walk.steps_taken import StepTaken
from builder.walk.walk_tables import WalkTables
from builder.wording.day_text import clock_text

BLANK = "________"
SIX = Decimal(6)  # minutes in a tenth of an hour


def minutes_lines(
    tables: WalkTables, state: JobState, taken: Sequence[StepTaken], hours: str, shop: Shop
) -> list[str]:
    """Return start and end, and hands-on time beside what was planned; "" hours are not known."""
    before = before_repair(state, taken)
    after = taken[len(before) :]
    planned = sum((_planned(tables, one) for one in before), Decimal(0))
    tenths = rounded_tenths([_minutes(before), _minutes(after)])
    lines = [_from_to(state, taken, shop), _line("Hands-on, all of it", taken, sum(tenths), "")]
    plan = f"{_hours(planned, *rounded_tenths([planned]))} planned" if planned else ""
    lines.append(_line("Diagnosis", before, tenths[0], plan))
    if after:
        estimate = f"{hours} h on the estimate" if hours else ""
        lines.append(_line("Repair and verification", after, tenths[1], estimate))
    return lines


def rounded_tenths(minutes: Sequence[Decimal]) -> list[int]:
    """Return the rows in tenths of an hour, so that they add up as printed.

    The sum is rounded half up; each row is cut to whole tenths, and those that lost most get the
    tenths that are missing in the sum. No row is off by a whole tenth.
    """
    exact = [one / SIX for one in minutes]
    rows = [int(one) for one in exact]
    missing = int(sum(exact, Decimal(0)).quantize(Decimal(1), ROUND_HALF_UP)) - sum(rows)
    order = sorted(range(len(rows)), key=lambda at: exact[at] - rows[at], reverse=True)
    for at in order[:missing]:
        rows[at] += 1
    return rows


def _from_to(state: JobState, taken: Sequence[StepTaken], shop: Shop) -> str:
    """Return when the job began and when its last step was done, by the clock of the shop."""
    times = [one.entry.at for one in taken if one.entry.at]
    started = next((event.at for event in state.events if event.at), "")
    start, end = clock_text(started, shop), clock_text(times[-1] if times else "", shop)
    return f"Started {start or BLANK}, ended {end or BLANK}"


def _planned(tables: WalkTables, taken: StepTaken) -> Decimal:
    row = tables[taken.entry.inside]["steps"][taken.entry.step]
    return Decimal(row.get("minutes", 0))


def _minutes(taken: Sequence[StepTaken]) -> Decimal:
    return Decimal(sum(one.entry.minutes or 0 for one in taken if one.entry.event >= 0))


def _line(name: str, taken: Sequence[StepTaken], tenths: int, planned: str) -> str:
    minutes = [one.entry.minutes for one in taken if one.entry.event >= 0]
    timed = [one for one in minutes if one is not None]
    partly = " (not all steps timed)" if timed and len(timed) < len(minutes) else ""
    clock = f"{_hours(_minutes(taken), tenths)}{partly}" if timed else f"{BLANK} h"
    return f"{name}: " + "; ".join(filter(None, (clock, planned)))


def _hours(minutes: Decimal, tenths: int) -> str:
    """Write minutes with the tenths of hours in which labor is booked."""
    return f"{minutes.normalize():f} min ({Decimal(tenths).scaleb(-1)} h)"
