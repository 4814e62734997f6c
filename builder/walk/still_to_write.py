"""What a job's papers still need before they are filed, and who adds it.

In: the tables, a state at an end, the library, what the record has of the job. Out: `OpenPoint`s. A
repair order without its DTCs, its choice and its reasons is asked back: the write-up asks for
them, and a paper that was printed without says so in words.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from builder.model.ends import StopKind
from builder.model.library import Library
from builder.walk.cause_lines import HANDED, HANDED_ON, is_cause_open, is_repair_open, unwritten
from builder.walk.complaint_lines import AFTER, NEXT, REST, unexplained_blank, unexplained_text
from builder.walk.diagnosis import Diagnosis, diagnosis_of
from builder.walk.job_minutes import is_over_estimate
from builder.walk.job_state import STUCK, JobState, is_repairing
from builder.walk.known_words import PLACE, own_words
from builder.walk.noted_codes import BEFORE, code_lines, codes_in
from builder.walk.repair_tests import tests_of_repair
from builder.walk.steps_taken import StepTaken, steps_taken
from builder.walk.told import row_of
from builder.walk.walk_tables import WalkTables

TECH, WRITER = "tech", "service writer"
CODES, CHOSEN, TIME = "codes", "chosen", "time"  # names of the tech's own words
_ASKS_CODES = re.compile(r"\bDTCs? (?:is|are)\b|\b(?:Which|other) DTCs?\b|\bstored\b")
_NO_CODES = re.compile(r"\b(?:no|none|neither|not|silent|nothing)\b")


@dataclass(frozen=True, slots=True)
class OpenPoint:
    """One thing that is still to be written; `name` is that of the words for the papers."""

    name: str
    words: str
    who: str


def open_points(
    tables: WalkTables, state: JobState, library: Library, job: Mapping[str, str]
) -> list[OpenPoint]:
    """Return what is still to be written; [] before an end, and before a repair is done."""
    if state.end is None or is_repairing(state):
        return []
    taken, found = steps_taken(tables, state), diagnosis_of(tables, state, library)
    own = own_words(state)
    points = [*_of_codes(tables, taken, own, job, library)]
    if isinstance(found, Diagnosis):
        points += [*_of_repair(tables, state, found, taken), *_of_choice(own, job)]
    elif state.end.kind in (*HANDED_ON, STUCK) and HANDED not in own:
        points.append(OpenPoint(HANDED, "who took the job over", TECH))
    elif state.end.kind == StopKind.CUSTOMER and CHOSEN not in own:
        points.append(OpenPoint(CHOSEN, "what the customer decided", WRITER))
    return points


def open_lines(points: Sequence[OpenPoint]) -> list[str]:
    """Return a line for each person who still has something to add."""
    people = dict.fromkeys(point.who for point in points)
    return [
        f"The {who} adds: {'; '.join(one.words for one in points if one.who == who)}."
        for who in people
    ]


def asked_lines(tables: WalkTables, state: JobState, library: Library) -> Iterator[str]:
    """Yield what the terminal asks for at an end, with the answers that are known."""
    points = open_points(tables, state, library, {})
    if not points:
        return
    options = row_of(tables, state.frames[0]).get("options", [])
    known = {
        CODES: ["none stored", "not scanned"],
        CHOSEN: [f"{id_} ({words})" for id_, words in options],
    }
    yield "For the papers, still to write (`papers NAME WORDS`, or leave it for a pen):"
    for one in filter(lambda point: point.name, points):
        answers = ", ".join(known.get(one.name, ()))
        yield f"  papers {one.name}  {one.words}" + (f": {answers}" if answers else "")
    hours = row_of(tables, state.frames[0]).get("hours", "")
    if hours and TIME not in (*own_words(state), *(one.name for one in points)):
        # A job that was typed in afterward has no times yet, but its paper may get them.
        yield f"  papers {TIME}  why it took longer, if it took well over {hours} h"


def _of_codes(
    tables: WalkTables,
    taken: Sequence[StepTaken],
    own: Mapping[str, str],
    job: Mapping[str, str],
    library: Library,
) -> Iterator[OpenPoint]:
    lines = code_lines(taken, job.get("codes", ""), library, own.get(CODES, ""))
    known = [one for line in lines if line.endswith(BEFORE) for one in codes_in(line)]
    if not any(line.endswith(BEFORE) for line in lines):
        yield OpenPoint(CODES, "DTCs before the repair, or that there were none", TECH)
        return
    for one in taken:
        asked = tables[one.entry.inside]["steps"][one.entry.step]["text"]
        # Beside the one that the job began with, `other` is a second.
        is_numbered = len({code for code, _ in known}) >= (2 if "other" in asked else 1)
        if not is_numbered and _leans_on_codes(one, asked):
            yield OpenPoint(CODES, f"number of the DTC behind “{one.entry.result}”", TECH)


def _leans_on_codes(one: StepTaken, asked: str) -> bool:
    is_asked = one.entry.kind == "check" and not one.verifies and _ASKS_CODES.search(asked)
    return bool(is_asked and not _NO_CODES.search(one.entry.result))


def _of_repair(
    tables: WalkTables, state: JobState, found: Diagnosis, taken: Sequence[StepTaken]
) -> Iterator[OpenPoint]:
    own = found.own_words
    if is_cause_open(found):
        yield OpenPoint("cause", "which it was", TECH)
    if is_repair_open(found):
        yield OpenPoint("repair", "exactly what was done", TECH)
    if found.needs_place:
        yield OpenPoint(PLACE, "where: side, axle, or cylinder", TECH)
    if unexplained_blank(found.complaint, found.handed_off, own.get(REST, "")):
        yield OpenPoint(REST, "what of the complaint this cause doesn't explain", TECH)
    if unexplained_text(own.get(REST, "")) and NEXT not in own:
        yield OpenPoint(NEXT, "what becomes of the rest of the complaint", TECH)
    for name in unwritten(tables, state, tests_of_repair(state, taken)[0]):
        yield OpenPoint("", name, TECH)
    if AFTER not in own:
        yield OpenPoint(AFTER, "complaint and DTCs after the repair", TECH)
    hours = row_of(tables, state.frames[0]).get("hours", "")
    if TIME not in own and is_over_estimate(state, taken, hours):
        yield OpenPoint(TIME, "why it took longer than estimated", TECH)


def _of_choice(own: Mapping[str, str], job: Mapping[str, str]) -> Iterator[OpenPoint]:
    if not (own.get(CHOSEN) or job.get("chosen")):
        yield OpenPoint(CHOSEN, "what the customer chose, and its price", WRITER)
