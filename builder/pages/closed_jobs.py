"""Closed jobs as pages may show them: enough to learn from, too little to identify the vehicle.

In: the library. Out: `ClosedJob`s, newest first. An exact day and an exact mileage would let a
customer, a neighbor or a buyer pick out one vehicle. So a page gets the month and a rounded
mileage, and no page reads a case in any other way.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation

from builder.model.knowledge import Case
from builder.model.library import Library
from builder.model.text import Text
from builder.wording.value_text import grouped_number, number_text

MILEAGE_STEP = 5000  # km: common practice, no source


@dataclass(frozen=True, slots=True)
class ClosedJob:
    """A closed job, ready to be laid out."""

    id: str
    month: str  # 2026-04
    vehicle: str  # Corvane Tern 2019, about 85 000 km
    tree: Text
    fix: Text | None
    fix_in: Text  # the tree of the fix
    minutes: str  # "" where none were recorded
    outcome: str


def closed_jobs(library: Library) -> tuple[ClosedJob, ...]:
    """Return every closed job, newest month first."""
    return _newest_first(library.cases.values())


def closed_jobs_of(library: Library, tree: str) -> tuple[ClosedJob, ...]:
    """Return the closed jobs that began or ended in a tree, newest month first."""
    cases = (case for case in library.cases.values() if tree in (case.tree, case.fix_in))
    return _newest_first(cases)


def _newest_first(cases: Iterable[Case]) -> tuple[ClosedJob, ...]:
    jobs = map(_closed_job, cases)
    return tuple(sorted(jobs, key=lambda job: (job.month, job.id), reverse=True))


def _closed_job(case: Case) -> ClosedJob:
    return ClosedJob(
        id=case.id,
        month=case.closed[:7],
        vehicle=", ".join(_vehicle(case)),
        tree=case.tree,
        fix=case.fix,
        fix_in=case.fix_in or case.tree,
        minutes="" if case.worked is None else number_text(case.worked),
        outcome=str(case.outcome),
    )


def _vehicle(case: Case) -> Iterator[str]:
    parts = [str(case.vehicle[name]) for name in ("make", "model", "year") if name in case.vehicle]
    if parts:
        yield " ".join(parts)
    if mileage := rounded_mileage(case.vehicle.get("km", "")):
        yield mileage


def rounded_mileage(text: str) -> str:
    """Round a mileage in km to the nearest 5,000; return "" for text that is no number."""
    try:
        mileage = Decimal(text)
    except InvalidOperation:
        return ""
    if not mileage.is_finite() or not 0 <= mileage < 10**7:
        return ""
    steps = round(mileage / MILEAGE_STEP)
    if not steps:
        return f"under {grouped_number(Decimal(MILEAGE_STEP))} km"
    return f"about {grouped_number(Decimal(steps * MILEAGE_STEP))} km"
