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
from builder.walk.complaint_lines import (
    AFTER,
    REST,
    after_repair_text,
    unexplained_blank,
    unexplained_text,
)
from builder.walk.diagnosis import Diagnosis, before_repair, diagnosis_of, last_day
from builder.walk.estimate_lines import choice_lines, hours_text, part_lines
from builder.walk.job_details import BLANK, job_details
from builder.walk.job_minutes import minutes_lines
from builder.walk.job_state import CANNOT_TEST, NONE_OF_THESE, JobState
from builder.walk.measured import asked_words, measured_check
from builder.walk.measured_lines import evidence_line, evidence_lines
from builder.walk.noted_codes import AFTERWARD, code_lines, note_lines
from builder.walk.repair_tests import verification_lines
from builder.walk.ruled_out import checked_lines, good_lines, ruled_out_lines
from builder.walk.steps_taken import StepTaken, steps_taken
from builder.walk.told import named, row_of
from builder.walk.walk_tables import WalkTables
from builder.wording.labels import STOP_LABELS
from builder.wording.past_tense import past_tense
from builder.wording.sentences import capitalized, uncapitalized

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
    codes = code_lines(known.taken, known.job.get("codes", ""), library)
    verified = [*verification_lines(tables, state, known.taken, library), *_by_hand(known, codes)]
    sections = (
        ("Complaint", _complaint(known)),
        ("Cause", _cause(known)),
        ("Correction", _correction(known)),
        (VERIFIED, verified),
        ("Trouble codes", codes),
        ("Noted on the way", note_lines(known.taken)),
        ("Ruled out", ruled_out_lines(tables, state, known.taken, library)),
        ("Found good", good_lines(tables, state, known.taken, library)),
        (ALSO, checked_lines(tables, state, known.taken, library)),
        ("Time", minutes_lines(tables, state, known.taken, hours_text(options), library.shop)),
        ("Parts", _parts(known)),
        ("Chosen and declined", choice_lines(known.options, known.job, library.shop)),
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
        likely = "Likely, not all of it was checked: " if found.unproved else ""
        return [f"{likely}{found.cause or found.repair}.", *open_, *_evidence(found)]
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
    """Yield what convicts the fix, and what it should rest on but nobody checked."""
    for check in found.evidence:
        yield from evidence_lines(check)
        yield from (f"{capitalized(name)}: {BLANK * 2}" for name in check.unwritten)
    for asked in found.unproved:
        yield f"Not checked on this job: {asked_words(asked)}"


def _complaint(known: _Job) -> list[str]:
    """Return the customer's words, and what of them the cause doesn't explain."""
    said, own = known.state.complaint[:LONGEST_COMPLAINT], _own_words(known).get(REST, "")
    blank = unexplained_blank(said, _is_handed_off(known), own) if _is_repair(known) else ""
    more = unexplained_text(own) or (f"{blank} {BLANK * 2}" if blank else "")
    return [said or "Not recorded.", *([more] if more else [])]


def _by_hand(known: _Job, codes: Sequence[str]) -> list[str]:
    """Tell how the complaint is after the repair, or leave it to a pen."""
    if not _is_repair(known):
        return []
    own = _own_words(known).get(AFTER, "")
    has_codes = any(line.endswith(AFTERWARD) for line in codes)
    return [after_repair_text(known.state.complaint, _is_handed_off(known), own, has_codes)]


def _is_repair(known: _Job) -> bool:
    return known.state.end is not None and known.state.end.kind == "fix"


def _is_handed_off(known: _Job) -> bool:
    end = known.state.end
    return end is not None and end.inside != known.state.tree


def _own_words(known: _Job) -> Mapping[str, str]:
    end = known.state.end
    return known.state.write_up.get(f"{end.inside}#{end.step}", {}) if end else {}


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


def _parts(known: _Job) -> list[str]:
    if not _is_repair(known):
        return []
    own = _own_words(known).get("parts", "")
    return part_lines(known.options, known.job.get("chosen", FIT_HERE), own)
