"""The story of a job for the repair order.

In: the tables, a state, the library, the estimate of the fix. Out: a `Story`: sections of lines,
the same for the terminal and the print. Every line comes from the record; what nobody did or
measured is said to be so.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from builder.model.library import Library
from builder.plan.estimate_options import EstimateOption
from builder.plan.refused_options import FIT_HERE
from builder.walk.cause_lines import (
    cause_lines,
    correction_lines,
    is_repair_open,
    no_cause_lines,
)
from builder.walk.complaint_lines import (
    AFTER,
    REST,
    after_repair_text,
    unexplained_blank,
    unexplained_text,
)
from builder.walk.diagnosis import Diagnosis, diagnosis_of, last_day
from builder.walk.estimate_lines import choice_lines, hours_text, part_lines, with_known_parts
from builder.walk.job_details import BLANK, job_details
from builder.walk.job_minutes import minutes_lines
from builder.walk.job_state import JobState
from builder.walk.noted_codes import AFTERWARD, code_lines, note_lines
from builder.walk.repair_tests import verification_lines
from builder.walk.ruled_out import checked_lines, good_lines, ruled_out_lines
from builder.walk.steps_taken import StepTaken, steps_taken
from builder.walk.walk_tables import WalkTables
from builder.wording.sentences import uncapitalized

VERIFIED, ALSO = "Verification, after the repair", "Also checked, before the repair"
LONGEST_COMPLAINT = 600  # characters, so that the story stays on two pages


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
    found: Diagnosis | None  # None where the walk came to no fix
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
    diagnosis, taken = diagnosis_of(tables, state, library), steps_taken(tables, state)
    found = diagnosis if isinstance(diagnosis, Diagnosis) else None
    options = with_known_parts(options, found.known if found else ())
    known = _Job(tables, state, library, taken, found, options, job or {})
    codes = code_lines(taken, known.job.get("codes", ""), library)
    cause = cause_lines(found) if found else no_cause_lines(tables, state, taken, library)
    sections = (
        ("Complaint", _complaint(known)),
        ("Cause", cause),
        ("Correction", correction_lines(found, state, taken)),
        (VERIFIED, _verified(known, codes)),
        ("Trouble codes", codes),
        ("Noted on the way", note_lines(taken)),
        ("Ruled out", ruled_out_lines(tables, state, taken, library)),
        ("Found good", good_lines(tables, state, taken, library)),
        (ALSO, checked_lines(tables, state, taken, library)),
        ("Time", minutes_lines(tables, state, taken, hours_text(options), library.shop)),
        ("Parts", _parts(known)),
        ("Chosen and declined", choice_lines(options, known.job, library.shop)),
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


def _complaint(known: _Job) -> list[str]:
    """Return the customer's words, and what of them the cause doesn't explain."""
    complaint, found = known.state.complaint[:LONGEST_COMPLAINT], known.found
    if found is None:
        return [complaint or "Not recorded."]
    own = found.own_words.get(REST, "")
    blank = unexplained_blank(complaint, found.handed_off, own)
    more = unexplained_text(own) or (f"{blank} {BLANK * 2}" if blank else "")
    return [complaint or "Not recorded.", *([more] if more else [])]


def _verified(known: _Job, codes: Sequence[str]) -> list[str]:
    """Return the tests of the repair, and how the complaint is after it, if only for a pen."""
    found = known.found
    if found is None:
        return []
    rest, own = (found.own_words.get(name, "") for name in (REST, AFTER))
    tests = verification_lines(known.tables, known.state, known.taken, known.library, rest)
    has_codes = any(line.endswith(AFTERWARD) for line in codes)
    return [*tests, after_repair_text(found.complaint, found.handed_off, own, has_codes)]


def _parts(known: _Job) -> list[str]:
    if known.found is None:
        return []
    own = known.found.own_words.get("parts", "")
    chosen, asks_which = known.job.get("chosen", FIT_HERE), not is_repair_open(known.found)
    return part_lines(known.options, chosen, own, asks_which)
