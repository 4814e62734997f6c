"""The story of a job for the repair order.

In: the tables, a state, the library, the estimate of the fix. Out: a `Story`: sections of lines,
the same for the terminal and the print. Every line comes from the record; what nobody did or
measured is said to be so.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from builder.model.library import Library
from builder.plan.estimate_options import EstimateOption, declined
from builder.plan.refused_options import FIT_HERE
from builder.walk.cause_lines import (
    cause_lines,
    correction_lines,
    earlier_repairs,
    is_repair_open,
    no_cause_lines,
)
from builder.walk.complaint_lines import (
    AFTER,
    REST,
    after_repair_text,
    complaint_lines,
    unexplained_blank,
)
from builder.walk.diagnosis import Diagnosis, before_repair, diagnosis_of, last_day
from builder.walk.estimate_lines import choice_lines, hours_text, with_known_parts
from builder.walk.job_details import BLANK, job_details
from builder.walk.job_minutes import minutes_lines
from builder.walk.job_state import JobState
from builder.walk.known_words import own_words
from builder.walk.noted_codes import AFTERWARD, code_lines, note_lines
from builder.walk.parts_paid import part_lines, pay_lines
from builder.walk.repair_tests import verification_lines
from builder.walk.ruled_out import checked_lines, good_lines, ruled_out_lines
from builder.walk.steps_taken import StepTaken, steps_taken
from builder.walk.still_to_write import open_lines, open_points
from builder.walk.stop_evidence import stop_lines
from builder.walk.unread_after import unread_lines
from builder.walk.walk_tables import WalkTables
from builder.wording.sentences import uncapitalized
from builder.wording.value_text import money_text

FOUND = "What was found"  # at a stop, ahead of what is advised
NOTED = "Noted on the way"
NOT_READY, NOT_PROVED = "Not ready to file", "Complaint checked: "
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
    own = own_words(state)
    chosen = {name: own[name] for name in ("chosen", "declined") if name in own}
    known = _Job(tables, state, library, taken, found, options, {**(job or {}), **chosen})
    codes = code_lines(taken, known.job.get("codes", ""), library, own.get("codes", ""))
    cause = cause_lines(found) if found else no_cause_lines(tables, state, taken)
    sections = (
        (NOT_READY, open_lines(open_points(tables, state, library, known.job))),
        ("Complaint", _complaint(known)),
        (FOUND, [*stop_lines(tables, state, taken, library)]),
        ("Cause", cause),
        ("Correction", correction_lines(tables, found, state, taken)),
        (VERIFIED, _verified(known, codes)),
        ("Trouble codes", codes),
        (NOTED, note_lines(taken)),
        ("Ruled out", ruled_out_lines(tables, state, taken, library)),
        ("Found good", good_lines(tables, state, taken, library)),
        (ALSO, checked_lines(tables, state, taken, library)),
        ("Time", minutes_lines(tables, state, taken, hours_text(options), library.shop)),
        ("Parts", _parts(known)),
        ("Chosen and declined", _chosen(known)),
        ("Owed so far", _owed(known)),
    )
    return Story(
        title=_title(tables, state),
        head=_head(known),
        sections=tuple((name, tuple(lines)) for name, lines in _each_once(sections) if lines),
    )


def _each_once(
    sections: Sequence[tuple[str, Sequence[str]]],
) -> Iterator[tuple[str, Sequence[str]]]:
    """Yield the sections; what stands beside its check isn't noted again."""
    for name, lines in sections:
        others = " ".join(line for other, rest in sections if other != NOTED for line in rest)
        is_new = [line for line in lines if line.casefold() not in others.casefold()]
        yield name, is_new if name == NOTED else lines


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
    is_proved = state.end is None or state.end.kind == "fix"
    return ("" if is_proved else NOT_PROVED) + "; then: ".join(titles)


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
    own = found.own_words
    blank = unexplained_blank(complaint, found.handed_off, own.get(REST, ""))
    lines = complaint_lines(complaint, found.handed_off, own, is_closed=True)
    return [complaint or "Not recorded.", *lines, *([f"{blank} {BLANK * 2}"] if blank else [])]


def _verified(known: _Job, codes: Sequence[str]) -> list[str]:
    """Return the tests of the repair, and how the complaint is after it, if only for a pen."""
    found = known.found
    if found is None:
        return []
    rest, own = (found.own_words.get(name, "") for name in (REST, AFTER))
    tests = verification_lines(known.tables, known.state, known.taken, known.library, rest)
    has_codes = any(line.endswith(AFTERWARD) for line in codes)
    unread = unread_lines(known.tables, known.state, known.taken, known.library)
    return [*tests, *unread, after_repair_text(found.complaint, found.handed_off, own, has_codes)]


def _parts(known: _Job) -> list[str]:
    if known.found is None:
        return []
    own = known.found.own_words.get("parts", "")
    chosen, asks_which = known.job.get("chosen", FIT_HERE), not is_repair_open(known.found)
    return part_lines(known.options, chosen, own, asks_which, known.library.shop)


def _chosen(known: _Job) -> list[str]:
    found = known.found
    own = found.own_words if found else {}
    chosen, shop = known.job.get("chosen", ""), known.library.shop
    lines = choice_lines(known.options, {**known.job, **own}, shop)
    before = before_repair(known.state, known.taken)
    earlier = [
        f"Earlier repair, {text}: ☐ not charged  ☐ charged, labor {BLANK}"
        for text in (earlier_repairs(known.tables, before) if found else ())
    ]
    return [*lines, *pay_lines(known.options, chosen, own.get("parts", ""), shop), *earlier]


def _owed(known: _Job) -> list[str]:
    """Return what the customer owes where a walk came to no repair: the diagnosis, with its tax."""
    end, total = known.state.end, declined(known.library.shop).total
    if end is None or end.kind == "fix" or not total or not total.high:
        return []
    owed = money_text(total, known.library.shop)
    return [f"Diagnosis: {owed}. Anything more is quoted before it is done."]
