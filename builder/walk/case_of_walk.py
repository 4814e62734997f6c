"""A walk as a closed job that anybody may read: what was measured, without who and whose.

In: a state that ended at a fix, and what the record says of the job. Out: a `Case`. Free text that
somebody typed (the complaint, notes, names) is left out: nothing could tell a name in it. What the
walk asked for is kept, a part or module by its ID whichever name of it was typed. The day becomes
the first of its month, the mileage is rounded to 5,000 km.
"""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from hashlib import sha256

from builder.model.knowledge import Case, CaseOutcome, CaseStep
from builder.model.library import Library
from builder.model.text import NOWHERE, Number, Text
from builder.trade.mileage import rounded_kilometers
from builder.walk.answered import NOTHING_SHOWN
from builder.walk.diagnosis import before_repair
from builder.walk.events import Value
from builder.walk.free_answers import with_known_names
from builder.walk.job_state import JobState, RecordedReading, Refused
from builder.walk.open_text import is_open, secrets_of
from builder.walk.steps_taken import StepTaken, steps_taken
from builder.walk.walk_tables import PROCEDURES, WalkTables

REPAIRED = "repaired"  # the result of a fix that was done on the way


def case_of_walk(
    tables: WalkTables, state: JobState, library: Library, job: Mapping[str, str], today: date
) -> Case | Refused:
    """Return the closed job of a walk, or why it can't be filed."""
    end = state.end
    if end is None or end.kind != "fix" or end.verified is None:
        return Refused("a job is filed once its fix is done and tested; this walk isn't there yet")
    taken = steps_taken(tables, state)
    path = tuple(_path(before_repair(state, taken), state.tree))
    days = [one.entry.at[:10] for one in taken if one.entry.at] or [today.isoformat()]
    answers = _open_answers(taken, state, secrets_of(job))
    known = with_known_names(tables, library, _trees(taken, state), answers)
    asked = {name: text for name, text in known.items() if isinstance(text, str)}
    content = (state.tree, state.vehicle, min(days)[:7], path, sorted(asked.items()), end.step)
    return Case(
        id=f"{max(days)[:7]}-{sha256(repr(content).encode()).hexdigest()[:8]}",
        file="",
        at=NOWHERE,
        tree=Text(state.tree),
        revision=Text(state.revision),
        vehicle={name: Text(text) for name, text in _vehicle(state, library, job).items() if text},
        opened=Text(f"{min(days)[:7]}-01"),
        closed=Text(f"{max(days)[:7]}-01"),
        path=path,
        fix=Text(end.step),
        fix_in=Text(end.inside) if end.inside != state.tree else None,
        worked=_worked(taken),
        waited=None,
        outcome=CaseOutcome.FIXED if end.verified else CaseOutcome.UNKNOWN,
        walked=True,
        asked={name: Text(text) for name, text in asked.items()},
        lists={
            name: tuple(map(Text, value))
            for name, value in known.items()
            if not isinstance(value, str)
        },
    )


def _path(taken: Sequence[StepTaken], tree: str) -> Iterator[CaseStep]:
    for one in taken:
        entry = one.entry
        if one.verifies:
            continue
        readings = {
            name: Text(_reading(reading))
            for name, reading in entry.readings.items()
            if reading.typed  # a computed one follows from the others
        }
        yield CaseStep(
            step=Text(entry.step),
            result=Text(REPAIRED if entry.kind == "fix" else entry.result),
            reading=readings.pop("", None),
            readings=readings,
            inside=Text(entry.inside) if entry.inside != tree else None,
            stated=entry.stated,
        )


def _reading(reading: RecordedReading) -> str:
    if reading.value in ("OL", NOTHING_SHOWN):
        return reading.value
    return f"{reading.value} {reading.unit}".strip()


def _trees(taken: Sequence[StepTaken], state: JobState) -> set[str]:
    inside = {one.entry.inside for one in taken} | {state.tree}
    return {tree for tree in inside if not tree.startswith(PROCEDURES)}


def _open_answers(
    taken: Sequence[StepTaken], state: JobState, secrets: frozenset[str]
) -> dict[str, Value]:
    """Return what was asked for, as far as it names nobody: texts, and lists of texts."""
    lists = {name: value for name, value in state.filled.items() if not isinstance(value, str)}
    answers: dict[str, Value] = {**_asked(taken, state), **lists}
    texts = {name: value if isinstance(value, str) else ", ".join(value)
             for name, value in answers.items()}  # fmt: skip
    return {name: value for name, value in answers.items() if is_open(texts[name], secrets)}


def _asked(taken: Sequence[StepTaken], state: JobState) -> dict[str, str]:
    """Return what filled placeholders of trees, and the specs that were looked up."""
    asked = {name: value for name, value in state.filled.items() if isinstance(value, str)}
    for one in taken:
        if not one.entry.inside.startswith(PROCEDURES):
            asked |= one.frame.filled
    return asked | dict(state.frames[0].filled)


def _vehicle(state: JobState, library: Library, job: Mapping[str, str]) -> dict[str, str]:
    known = library.vehicles.get(state.vehicle)
    kilometers = rounded_kilometers(job.get("mileage", ""))
    return {
        "id": state.vehicle if known else "",
        "make": str(known.scope.make) if known else job.get("make", ""),
        "model": str(known.scope.model) if known else job.get("model", ""),
        "year": job.get("year", ""),
        "km": "" if kilometers is None else str(kilometers),
    }


def _worked(taken: Sequence[StepTaken]) -> Number | None:
    minutes = [one.entry.minutes for one in taken if one.entry.minutes is not None]
    return Number(str(sum(minutes))) if minutes else None
