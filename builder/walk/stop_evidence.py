"""The checks of a job as they were last answered, and those that led to a stop.

In: the tables, a state, the steps as they were taken. Out: steps. A foreman who takes a job over
reads first what decided it: the last answer, what was seen before one that was only told, each
reading that is out of its limits.
"""

from collections.abc import Iterator, Mapping, Sequence

from builder.model.library import Library
from builder.walk.cause_lines import PLACE_LABEL
from builder.walk.diagnosis import before_repair
from builder.walk.job_state import STUCK, JobState
from builder.walk.known_words import PLACE, own_words
from builder.walk.measured_lines import evidence_lines
from builder.walk.path_proofs import path_proofs
from builder.walk.steps_taken import StepTaken
from builder.walk.walk_tables import PROCEDURES, WalkTables
from builder.walk.way_checks import checked_on_the_way
from builder.wording.sentences import capitalized

Answered = Mapping[tuple[str, str], StepTaken]  # by tree and check, as each was last left
TECHS_WORDS = "The tech's words"


def answered_checks(state: JobState, taken: Sequence[StepTaken]) -> Answered:
    """Return the checks of trees that were answered before the repair, as they were last left."""
    return {
        (one.entry.inside, one.entry.step): one
        for one in before_repair(state, taken)
        if one.entry.kind == "check"
        and not one.verifies
        and not one.entry.inside.startswith(PROCEDURES)
    }


def stop_evidence(
    tables: WalkTables, state: JobState, taken: Sequence[StepTaken], library: Library
) -> list[StepTaken]:
    """Return what decided that a walk ends at a stop, in the order in which it was found."""
    if state.end is None or state.end.kind == "fix":
        return []
    ids = {id(one) for one in answered_checks(state, taken).values()}
    answered = [one for one in taken if id(one) in ids]
    last = answered[-1:] if state.end.kind != STUCK else []
    if last and _is_told(tables, last[0]):
        last += [one for one in answered if not _is_told(tables, one)][-1:]
    shown = [*last, *path_proofs(tables, state.end, taken, last, library)]
    return [one for one in taken if any(one is other for other in shown)]


def stop_lines(
    tables: WalkTables, state: JobState, taken: Sequence[StepTaken], library: Library
) -> Iterator[str]:
    """Yield what was found where a walk came to no fix: the tech's words, then what decided it."""
    if state.end is None or state.end.kind == "fix":
        return
    own = own_words(state)
    if cause := own.get("cause"):
        yield f"{TECHS_WORDS}: {capitalized(cause)}."
    if place := own.get(PLACE):
        yield f"{PLACE_LABEL}: {place}"
    for one in stop_evidence(tables, state, taken, library):
        yield from evidence_lines(checked_on_the_way(tables, one, taken, own, library))


def _is_told(tables: WalkTables, one: StepTaken) -> bool:
    return bool(tables[one.entry.inside]["steps"][one.entry.step].get("told"))
