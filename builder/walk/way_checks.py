"""A check on the way to an end, in words: what its procedure read, and which of several things.

In: the tables, a step as it was taken, all steps before the repair, what the tech wrote. Out: a
`MeasuredCheck`. An answer that stands for several things is cut to the one that somebody named.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from builder.model.library import Library
from builder.walk.known_words import known_words, words_of_check
from builder.walk.measured import MeasuredCheck, measured_check
from builder.walk.procedure_checks import checks_of_run
from builder.walk.steps_taken import StepTaken
from builder.walk.walk_tables import WalkTables
from builder.wording.one_of_several import only_known

CODES = "codes"  # name of the tech's own words for the DTCs
_BARE = ("yes", "no", "none", "neither")  # in any text, so they name nothing


def measured_run(
    tables: WalkTables, taken: StepTaken, before: Sequence[StepTaken], library: Library
) -> tuple[MeasuredCheck, ...]:
    """Return what the procedure of a check measured, in its order."""
    return tuple(
        replace(
            measured_check(tables, one, library),
            parts=parts_of_answer(tables, one),
            asks_which=False,
        )
        for one in checks_of_run(before, taken)
    )


def parts_of_answer(tables: WalkTables, taken: StepTaken) -> tuple[str, ...]:
    """Return the things that an answer stands for, where it is more than one."""
    results = tables[taken.entry.inside]["steps"][taken.entry.step].get("results", ())
    every = (one.get("parts", []) for one in results if one["text"] == taken.entry.result)
    return tuple(next(every, []))


def checked_on_the_way(
    tables: WalkTables,
    taken: StepTaken,
    before: Sequence[StepTaken],
    own: Mapping[str, str],
    library: Library,
) -> MeasuredCheck:
    """Return a check that isn't the one that led to the end."""
    parts = parts_of_answer(tables, taken)
    noted = [text for one in before for text in one.entry.wrote.values()]
    convicts = bool(before) and taken is before[-1]
    known = [own.get(CODES, ""), *noted, *(known_words(own, ()) if convicts else ())]
    seen = words_of_check(own, taken.entry.step)
    seen = seen or only_known([one for one in parts if one not in _BARE], known)
    return replace(
        measured_check(tables, taken, library),
        parts=parts,
        asks_which=False,
        seen=seen,
        inner=measured_run(tables, taken, before, library),
    )
