"""The story of a job for the repair order.

In: the tables, a state, the library, the estimate of the fix. Out: a `Story`: sections of lines,
the same for the terminal and the print. Every line comes from the record; what nobody did or
measured is said to be so.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import takewhile

from builder.graph.runs import with_values
from builder.model.library import Library
from builder.plan.estimate_options import EstimateOption
from builder.plan.refused_options import FIT_HERE
from builder.walk.diagnosis import Diagnosis, before_repair, diagnosis_of, last_day
from builder.walk.job_details import BLANK, job_details
from builder.walk.job_minutes import minutes_lines
from builder.walk.job_state import CANNOT_TEST, NONE_OF_THESE, JobState
from builder.walk.measured import measured_check
from builder.walk.measured_lines import evidence_line
from builder.walk.noted_codes import code_lines, note_lines
from builder.walk.repair_tests import verification_lines
from builder.walk.ruled_out import checked_lines, ruled_out_lines
from builder.walk.steps_taken import StepTaken, steps_taken
from builder.walk.told import named, row_of
from builder.walk.walk_tables import WalkTables
from builder.wording.labels import STOP_LABELS
from builder.wording.past_tense import past_tense
from builder.wording.sentences import capitalized, uncapitalized
from builder.wording.value_text import money_text

VERIFIED, ALSO = "Verification, after the repair", "Also checked, before the repair"
LONGEST_COMPLAINT = 600  # characters, so that the story stays on two pages

_BLANKS = {"cause": "Exactly what", "repair": "Exactly what was done"}


@dataclass(frozen=True, slots=True)
class Story:
    """The parts of a write-up, in the order in which they are read."""

    title: str
    head: Mapping[str, str]  # repair order, vehicle, day; "" is left to be filled in
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
        ("Complaint", [state.complaint[:LONGEST_COMPLAINT] or "Not recorded."]),
        ("Cause", _cause(known)),
        ("Correction", _correction(known)),
        (VERIFIED, [*verification_lines(tables, state, known.taken, library), *_by_hand(known)]),
        ("Trouble codes", code_lines(known.taken, known.job.get("codes", ""), library)),
        ("Noted on the way", note_lines(known.taken)),
        ("Ruled out", ruled_out_lines(tables, state, known.taken, library)),
        (ALSO, checked_lines(tables, state, known.taken, library)),
        ("Time", minutes_lines(tables, state, known.taken, _hours(options), library.shop)),
        ("Parts", _parts(known)),
        ("Chosen and declined", _chosen(known)),
    )
    return Story(
        title=_title(tables, state),
        head=_head(known),
        sections=tuple((name, tuple(lines)) for name, lines in sections if lines),
    )


def story_lines(story: Story) -> Iterator[str]:
    """Yield a story as lines of plain text."""
    yield story.title
    yield from (f"{name}: {text}" for name, text in story.head.items() if text)
    for name, lines in story.sections:
        yield ""
        yield f"{name}:"
        yield from (f"  {line}" for line in lines)


def _title(tables: WalkTables, state: JobState) -> str:
    """Name the tree where the job began, and that in which it ended."""
    titles = [tables[state.tree]["title"]]
    if state.frames and state.frames[0].inside != state.tree:
        titles.append(uncapitalized(tables[state.frames[0].inside]["title"]))
    return "; then: ".join(titles)


def _head(known: _Job) -> dict[str, str]:
    day = last_day(known.taken)
    details = job_details(known.job, known.state.vehicle, known.library, day)
    names = dict.fromkeys(one.entry.who for one in known.taken if one.entry.who)
    return {**details, "Customer": known.job.get("customer", ""), "Techs": ", ".join(names)}


def _cause(known: _Job) -> list[str]:
    state, end = known.state, known.state.end
    if end is None:
        return ["Not found yet: the walk goes on."]
    if end.kind == "fix":
        found = diagnosis_of(known.tables, state, known.library)
        assert isinstance(found, Diagnosis)
        open_ = _left_open(found, "cause", found.cause)
        return [f"{found.cause or found.repair}.", *open_, *_evidence(found)]
    if end.kind == "stuck":
        return _stuck(known)
    words = row_of(known.tables, state.frames[0])["text"]
    last = [one for one in known.taken if one.entry.kind == "check"][-1:]
    lines = [evidence_line(measured_check(known.tables, one, known.library)) for one in last]
    return [f"{STOP_LABELS.get(end.kind, end.kind)}: {words}.", *lines]


def _stuck(known: _Job) -> list[str]:
    """Return why the tree had no way on: nothing fits, or a check that can't be done here."""
    last = [*takewhile(lambda one: one.entry.result == CANNOT_TEST, reversed(known.taken))][-1:]
    if not last:
        seen = [one.entry.seen for one in known.taken if one.entry.result == NONE_OF_THESE][-1:]
        return ["Not found: no result of the tree fits.", *(f"Seen: {one}" for one in seen if one)]
    step = row_of(known.tables, last[0].frame)["text"]
    words = with_values(step, named(known.tables, last[0].frame))
    reason = last[0].entry.seen
    lines = [f"Not found: this can't be tested here: {words}", f"In the way: {reason}"]
    return lines if reason else lines[:1]


def _evidence(found: Diagnosis) -> Iterator[str]:
    """Yield what convicts the fix, each with what its procedure read, and what decided it."""
    for check in found.evidence:
        yield evidence_line(check)
        for at, inner in enumerate(check.inner, 1):
            if inner.values or at == len(check.inner):
                yield f"By test: {evidence_line(inner)}"


def _by_hand(known: _Job) -> list[str]:
    """Ask for what an auditor looks for after a repair, as no step of a tree says it."""
    is_repair = known.state.end is not None and known.state.end.kind == "fix"
    return [f"Complaint gone: {BLANK}. DTCs after the repair: {BLANK}"] if is_repair else []


def _correction(known: _Job) -> list[str]:
    state, end = known.state, known.state.end
    if end is None or end.kind != "fix":
        return ["Nothing was repaired."]
    before = before_repair(state, known.taken)
    done = known.taken[len(before) : len(before) + 1]
    if not done:
        return ["Not done yet."]
    wrote = [f"{capitalized(name)}: {text}" for name, text in done[0].entry.wrote.items()]
    found = diagnosis_of(known.tables, state, known.library)
    assert isinstance(found, Diagnosis)
    return [f"{_done_text(found)}.", *_left_open(found, "repair", found.repair), *wrote]


def _left_open(found: Diagnosis, name: str, text: str) -> list[str]:
    """Return a blank where the tree's words name more than one thing and the tech said nothing."""
    is_open = re.search(r" or | if ", text) and not found.own_words.get(name)
    return [f"{_BLANKS[name]}: {BLANK * 3}"] if is_open else []


def _done_text(found: Diagnosis) -> str:
    """Return what was done; the tech's own words stay where their verb isn't known."""
    done = past_tense(found.repair)
    return capitalized(done.removeprefix("Done: ")) if found.own_words.get("repair") else done


def _hours(options: Sequence[EstimateOption]) -> str:
    """Return the hours of the repair as estimated; "" where they aren't known."""
    here = next((one for one in options if one.id == FIT_HERE), None)
    hours = [line.hours for line in here.lines if line.hours is not None] if here else []
    return f"{sum(hours):f}" if hours else ""


def _parts(known: _Job) -> list[str]:
    chosen = known.job.get("chosen", FIT_HERE)
    option = next((one for one in known.options if one.id == chosen), None)
    end = known.state.end
    if option is None or end is None or end.kind != "fix":
        return []
    if own := known.state.write_up.get(f"{end.inside}#{end.step}", {}).get("parts"):
        return [capitalized(own)]
    parts = [capitalized(line.item) for line in option.lines if line.kind == "part"]
    return [f"{part}, part number {BLANK}" for part in parts] or ["None."]


def _chosen(known: _Job) -> list[str]:
    """Return what the customer chose and turned down; blanks where nobody recorded it."""
    if not known.options:
        return []
    chosen, own = known.job.get("chosen"), known.job.get("declined")
    offered = [one for one in known.options if not one.not_offered]
    names = [_with_total(one, known.library) for one in offered if one.id == chosen]
    turned_down = [one.option for one in offered if one.id != chosen] if names else []
    declined = "; ".join([*turned_down, *([own] if own else [])])
    if not names and not declined:
        return [f"Chosen: {BLANK * 2} declined: {BLANK * 2}"]
    return [f"Chosen: {(names or [BLANK * 2])[0]}", f"Declined: {declined or BLANK * 2}"]


def _with_total(option: EstimateOption, library: Library) -> str:
    total = f", {money_text(option.total, library.shop)}" if option.total else ""
    return f"{option.option}{total}"
