"""The time of a job against its estimate.

In: the tables, the steps as they were taken, the estimated hours of the repair. Out: lines.
"""

from collections.abc import Sequence
from decimal import Decimal

from builder.walk.diagnosis import before_repair
from builder.walk.job_state import JobState
from builder.walk.steps_taken import StepTaken
from builder.walk.walk_tables import WalkTables


def minutes_lines(
    tables: WalkTables, state: JobState, taken: Sequence[StepTaken], hours: str
) -> list[str]:
    """Return minutes by the clock beside those that were planned; "" hours are not known."""
    before = before_repair(state, taken)
    after = taken[len(before) :]
    planned = sum((_planned(tables, one) for one in before), Decimal(0))
    lines = [_line("Diagnosis", before, f"{planned:f} min planned" if planned else "")]
    if after:
        estimate = f"estimate {hours} h" if hours else ""
        lines.append(_line("Repair and verification", after, estimate))
    return lines


def _planned(tables: WalkTables, taken: StepTaken) -> Decimal:
    row = tables[taken.entry.inside]["steps"][taken.entry.step]
    return Decimal(row.get("minutes", 0))


def _line(name: str, taken: Sequence[StepTaken], planned: str) -> str:
    minutes = [one.entry.minutes for one in taken if one.entry.event >= 0]
    timed = [one for one in minutes if one is not None]
    partly = " (not all steps timed)" if timed and len(timed) < len(minutes) else ""
    clock = f"{sum(timed)} min by the clock{partly}" if timed else "not timed"
    return f"{name}: " + "; ".join(filter(None, (clock, planned)))
