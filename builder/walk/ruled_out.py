"""What a walk ruled out and how, what it found good, and what else it checked.

In: the tables, the steps as they were taken. Out: lines. A cause is ruled out only if every check
that leads to its fix was answered here by another result, and not merely stated. A procedure stops
at the first thing it finds: only its good word speaks against the others. Where a fix is found by
the very result that its own test wants, or by a setup, the repair was done before it: no answer
speaks against it.
"""

from collections.abc import Iterable, Iterator, Sequence

from builder.model.figures import NOTHING_SHOWN
from builder.model.library import Library
from builder.walk.diagnosis import before_repair, evidence_of, target_taken
from builder.walk.job_state import CANNOT_TEST, NONE_OF_THESE, JobState
from builder.walk.known_words import own_words, words_of_check
from builder.walk.measured import MeasuredCheck, measured_check
from builder.walk.measured_lines import check_line, evidence_line, evidence_lines, run_lines
from builder.walk.path_proofs import is_good_word, path_proofs
from builder.walk.steps_taken import StepTaken
from builder.walk.stop_evidence import Answered, answered_checks, stop_evidence
from builder.walk.tree_rows import TreeTable, WalkStepRow
from builder.walk.walk_tables import WalkTables
from builder.walk.way_checks import checked_on_the_way
from builder.wording.plain_answer import is_rest
from builder.wording.quotes import without_quotes
from builder.wording.sentences import uncapitalized

SAVED = "saved"  # of DTCs: that says nothing of what was found
NO_ANSWER = (CANNOT_TEST, NONE_OF_THESE)


def ruled_out_lines(
    tables: WalkTables, state: JobState, taken: Sequence[StepTaken], library: Library
) -> list[str]:
    """Return a line for each cause that was ruled out, with the checks that did it."""
    causes: dict[tuple[int, ...], list[str]] = {}
    every = {id(one): one for one in taken}
    for fix, checks in _ruled_out(tables, state, answered_checks(state, taken)):
        if cause := without_quotes(fix):
            causes.setdefault(tuple(map(id, checks)), []).append(f"{cause}?")
    lines: list[str] = []
    for ids, names in causes.items():
        checks = [every[one] for one in ids]
        found = _on_the_way(tables, state, taken, checks, library)
        first, *rest = (evidence_line(one) for one in found)
        words = "; ".join([first, *map(uncapitalized, rest)])
        lines += [f"{' '.join(dict.fromkeys(names))} No. {words}"]
        lines += [line for one in found for line in run_lines(one)]
    return [*dict.fromkeys(lines)]


def _on_the_way(
    tables: WalkTables,
    state: JobState,
    taken: Sequence[StepTaken],
    checks: Iterable[StepTaken],
    library: Library,
) -> list[MeasuredCheck]:
    before, own = before_repair(state, taken), own_words(state)
    return [checked_on_the_way(tables, one, before, own, library) for one in checks]


def checked_lines(
    tables: WalkTables, state: JobState, taken: Sequence[StepTaken], library: Library
) -> list[str]:
    """Return the checks of the trees that neither convict nor rule out a cause.

    What was told and only says what it isn't is no evidence of anything.
    """
    own = own_words(state)
    rest = [
        one
        for one in _unused(tables, state, taken, library)
        if not _is_good(tables, one)
        and (_says_something(tables, one) or words_of_check(own, one.entry.step))
    ]
    found = _on_the_way(tables, state, taken, rest, library)
    return [line for one in found for line in evidence_lines(one)]


def _says_something(tables: WalkTables, one: StepTaken) -> bool:
    is_told_rest = _row(tables, one).get("told") and is_rest(one.entry.result)
    return one.entry.result != SAVED and not is_told_rest


def good_lines(
    tables: WalkTables, state: JobState, taken: Sequence[StepTaken], library: Library
) -> list[str]:
    """Return what was found good on the way, with the readings of its procedure."""
    good = [one for one in _unused(tables, state, taken, library) if _is_good(tables, one)]
    found = _on_the_way(tables, state, taken, good, library)
    return [line for one in found for line in evidence_lines(one)]


def good_names(
    tables: WalkTables, state: JobState, taken: Sequence[StepTaken], library: Library
) -> tuple[str, ...]:
    """Return what was found good, by its name alone: a customer asks if the rest was looked at."""
    good = [one for one in _unused(tables, state, taken, library) if _is_good(tables, one)]
    lines = (check_line(measured_check(tables, one, library)) for one in good)
    return tuple(dict.fromkeys(line.partition(": ")[0] for line in lines))


def _unused(
    tables: WalkTables, state: JobState, taken: Sequence[StepTaken], library: Library
) -> list[StepTaken]:
    """Return the checks that neither convict nor rule out a cause."""
    answered, end = answered_checks(state, taken), state.end
    used = [one for _, checks in _ruled_out(tables, state, answered) for one in checks]
    if end is not None and end.kind == "fix":
        before = before_repair(state, taken)
        proofs = [*evidence_of(tables, end, before)]
        used += [*proofs, *path_proofs(tables, end, before, proofs, library)]
    used += stop_evidence(tables, state, taken, library)
    return [one for one in answered.values() if not any(one is other for other in used)]


def _is_good(tables: WalkTables, one: StepTaken) -> bool:
    """Whether a check found what is right: the good word of a procedure, or within spec."""
    if "by" in _row(tables, one):
        return is_good_word(tables, one) and one.entry.result != SAVED
    return one.entry.result == "within spec"


def _row(tables: WalkTables, one: StepTaken) -> WalkStepRow:
    return tables[one.entry.inside]["steps"][one.entry.step]


def _ruled_out(
    tables: WalkTables, state: JobState, answered: Answered
) -> Iterator[tuple[str, list[StepTaken]]]:
    """Yield the cause of each fix that every check leading to it speaks against."""
    end = (state.end.inside, state.end.step) if state.end else ("", "")
    for id_ in dict.fromkeys(inside for inside, _ in answered):
        for fix, names in _entering(tables[id_]).items():
            checks = [answered[id_, name] for name in names if (id_, name) in answered]
            if (
                (id_, fix) != end
                and len(checks) == len(names)
                and all(_speaks_against(tables, one, fix) for one in checks)
            ):
                yield tables[id_]["steps"][fix].get("cause", ""), checks


def _speaks_against(tables: WalkTables, one: StepTaken, fix: str) -> bool:
    """Whether a check says that it isn't this; of several that may fit only the first was taken."""
    if one.entry.stated or one.entry.result in NO_ANSWER or target_taken(tables, one) == fix:
        return False
    row = _row(tables, one)
    if "by" in row and not _is_good(tables, one):
        return False
    results = row.get("results", [])
    if row.get("sets_up") or _is_found_repaired(tables, one, fix):
        return False
    if all(other["text"] == NOTHING_SHOWN for other in results if other["to"] == fix):
        return False  # that there is something to read says nothing of what it is of
    taken = next(at for at, other in enumerate(results) if other["text"] == one.entry.result)
    later = results[taken + 1 :] if row.get("several") else []
    return all(other["to"] != fix for other in later)


def _is_found_repaired(tables: WalkTables, one: StepTaken, fix: str) -> bool:
    """Whether the result that leads to a fix is what its own test wants to see after the repair."""
    steps = tables[one.entry.inside]["steps"]
    tests = [it for it in steps[fix].get("verify", []) if it.get("step") == one.entry.step]
    results = steps[one.entry.step].get("results", [])
    leading = {other["text"] for other in results if other["to"] == fix}
    return any(not leading.isdisjoint(it.get("passes", [])) for it in tests)


def _entering(table: TreeTable) -> dict[str, list[str]]:
    """Return for each fix the checks with a result that leads to it."""
    fixes = [name for name, row in table["steps"].items() if row["kind"] == "fix"]
    leads = {
        name: {one["to"] for one in row.get("results", ())} for name, row in table["steps"].items()
    }
    return {
        fix: names
        for fix in fixes
        if (names := [name for name, targets in leads.items() if fix in targets])
    }
