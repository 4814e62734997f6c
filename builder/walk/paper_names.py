"""The names under which words for the papers can be typed at an end.

In: the tables, a state, what was typed. Out: a `Refused` where no paper prints such words: a name
with a slip would take them along and nobody would read them.
"""

from collections.abc import Iterator
from difflib import get_close_matches

from builder.model.ends import StopKind
from builder.walk.cause_lines import HANDED, HANDED_ON
from builder.walk.events import WriteUp
from builder.walk.job_state import STUCK, JobState, Refused
from builder.walk.known_words import LONGEST_WORDS, OF_CHECK, OF_PAPERS, PLACE
from builder.walk.steps_taken import steps_taken
from builder.walk.stop_evidence import answered_checks
from builder.walk.walk_tables import WalkTables


def not_on_papers(tables: WalkTables, state: JobState, typed: WriteUp) -> Refused | None:
    """Return why words would be on no paper, with what can be written there; else None."""
    if state.end is None:
        return None  # nothing is written before an end: that is said elsewhere
    if len(typed.text) > LONGEST_WORDS:
        return Refused(
            f"{len(typed.text)} characters, and the papers have room for {LONGEST_WORDS}: "
            "say it shorter. Nothing was written"
        )
    names = [*_parts(state)]
    checks = [*_checks(tables, state)]
    marked = (f"{OF_CHECK}{one.removeprefix(OF_CHECK)}" for one in checks)
    if typed.name in (*names, *checks, *marked):
        return None
    near = get_close_matches(typed.name, [*names, *checks], n=1)
    hint = f"did you mean `{near[0]}`? " if near else ""
    listed = f"; of a check: {', '.join(checks)}" if checks else ""
    return Refused(
        f"the papers of this job have nothing called `{typed.name}`: {hint}"
        f"Nothing was written. Here you can write: {', '.join(names)}{listed}"
    )


def _parts(state: JobState) -> Iterator[str]:
    """Yield the parts of the papers that are printed at this end."""
    assert state.end is not None
    if state.end.kind == "fix":
        yield from (name for name in OF_PAPERS if name != HANDED)
        return
    yield from ("codes", "cause", PLACE, "time")
    if state.end.kind in (*HANDED_ON, STUCK):
        yield HANDED
    if state.end.kind == StopKind.CUSTOMER:
        yield "chosen"


def _checks(tables: WalkTables, state: JobState) -> Iterator[str]:
    """Yield the checks that were answered on the way; one called like a paper's part has a mark."""
    for _, step in answered_checks(state, steps_taken(tables, state)):
        yield f"{OF_CHECK}{step}" if step in OF_PAPERS else step
