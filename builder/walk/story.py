"""The story of a job for the repair order.

In: the tables, a state, the library, the estimate of the fix. Out: a `Story`: sections of lines,
the same for the terminal and the print. Every line comes from the record; what nobody did or
measured is said to be so.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from builder.model.library import Library
from builder.plan.estimate_options import EstimateOption
from builder.walk.diagnosis import Diagnosis, before_repair, diagnosis_of, last_day, vehicle_text
from builder.walk.job_minutes import minutes_lines
from builder.walk.job_state import JobState
from builder.walk.measured import evidence_line, measured_check
from builder.walk.noted_codes import code_lines
from builder.walk.repair_tests import verification_lines
from builder.walk.ruled_out import checked_lines, ruled_out_lines
from builder.walk.steps_taken import StepTaken, steps_taken
from builder.walk.told import row_of
from builder.walk.walk_tables import WalkTables
from builder.wording.labels import STOP_LABELS
from builder.wording.sentences import capitalized

FIT_HERE = "fit-here"


@dataclass(frozen=True, slots=True)
class Story:
    """The parts of a write-up, in the order in which they are read."""

    title: str
    head: tuple[str, ...]  # repair order, vehicle, day
    sections: tuple[tuple[str, tuple[str, ...]], ...]  # heading and lines


@dataclass(frozen=True, slots=True)
class _Job:
    """What the sections are written from."""

    tables: WalkTables
    state: JobState
    library: Library
    taken: Sequence[StepTaken]
    options: Sequence[EstimateOption]
    job: Mapping[str, str]


def story_of(
    tables: WalkTables,
    state: JobState,
    library: Library,
    options: Sequence[EstimateOption] = (),
    job: Mapping[str, str] | None = None,
) -> Story:
    """Write the story of a walk; `options` are those of its fix, `job` is what the record has."""
    known = _Job(tables, state, library, steps_taken(tables, state), options, job or {})
    sections = (
        ("Complaint", [state.complaint or "Not recorded."]),
        ("Cause", _cause(known)),
        ("Correction", _correction(known)),
        ("Verification", verification_lines(tables, state, known.taken, library)),
        ("Trouble codes", code_lines(tables, known.taken)),
        ("Ruled out", ruled_out_lines(tables, state, known.taken, library)),
        ("Also checked", checked_lines(tables, state, known.taken, library)),
        ("Time", minutes_lines(tables, state, known.taken, _hours(options))),
        ("Parts", _parts(known)),
        ("Declined", _declined(known)),
    )
    return Story(
        title=tables[state.tree]["title"],
        head=tuple(_head(known)),
        sections=tuple((name, tuple(lines)) for name, lines in sections if lines),
    )


def story_lines(story: Story) -> Iterator[str]:
    """Yield a story as lines of plain text."""
    yield story.title
    yield from story.head
    for name, lines in story.sections:
        yield ""
        yield f"{name}:"
        yield from (f"  {line}" for line in lines)


def _head(known: _Job) -> Iterator[str]:
    job, state = known.job, known.state
    named = " ".join(filter(None, (job.get("year"), job.get("make"), job.get("model"))))
    lines = {
        "Repair order": job.get("order", ""),
        "Vehicle": named or vehicle_text(state.vehicle, known.library),
        "VIN": job.get("vin", ""),
        "Mileage": job.get("mileage", ""),
        "Date": last_day(known.taken),
        "Techs": ", ".join(dict.fromkeys(one.entry.who for one in known.taken if one.entry.who)),
    }
    yield from (f"{name}: {text}" for name, text in lines.items() if text)


def _cause(known: _Job) -> list[str]:
    state, end = known.state, known.state.end
    if end is None:
        return ["Not found yet: the walk goes on."]
    if end.kind == "fix":
        found = diagnosis_of(known.tables, state, known.library)
        assert isinstance(found, Diagnosis)
        return [f"{found.cause or found.repair}.", *map(evidence_line, found.evidence)]
    if end.kind == "stuck":
        seen = [one.entry.seen for one in known.taken if one.entry.seen]
        return ["Not found: no result of the tree fits.", *(f"Seen: {one}" for one in seen[-1:])]
    words = row_of(known.tables, state.frames[0])["text"]
    last = [one for one in known.taken if one.entry.kind == "check"][-1:]
    lines = [evidence_line(measured_check(known.tables, one, known.library)) for one in last]
    return [f"{STOP_LABELS.get(end.kind, end.kind)}: {words}.", *lines]


def _correction(known: _Job) -> list[str]:
    state, end = known.state, known.state.end
    if end is None or end.kind != "fix":
        return ["Nothing was repaired."]
    before = before_repair(state, known.taken)
    done = known.taken[len(before) : len(before) + 1]
    if not done:
        return ["Not done yet."]
    wrote = [f"{capitalized(name)}: {text}" for name, text in done[0].entry.wrote.items()]
    return [f"{row_of(known.tables, state.frames[0])['text']}.", *wrote]


def _hours(options: Sequence[EstimateOption]) -> str:
    """Return the hours of the repair as estimated; "" where they aren't known."""
    here = next((one for one in options if one.id == FIT_HERE), None)
    hours = [line.hours for line in here.lines if line.hours is not None] if here else []
    return f"{sum(hours):f}" if hours else ""


def _parts(known: _Job) -> list[str]:
    chosen = known.job.get("chosen", FIT_HERE)
    option = next((one for one in known.options if one.id == chosen), None)
    if option is None or known.state.end is None or known.state.end.kind != "fix":
        return []
    return [line.item for line in option.lines if line.kind == "part"]


def _declined(known: _Job) -> list[str]:
    chosen, declined = known.job.get("chosen"), known.job.get("declined")
    offered = [one for one in known.options if not one.not_offered]
    turned_down = [one.option for one in offered if one.id != chosen] if chosen else []
    return [*turned_down, *([declined] if declined else [])] or (
        ["Not recorded."] if known.options else []
    )
