"""How a repair was verified: each test of the fix with its result.

In: the tables, a state that ended at a fix, the steps as they were taken. Out: lines. A test counts
as passed only if it was run and passed; one whose monitor hasn't run is not confirmed.
"""

import re
from collections.abc import Iterator, Sequence

from builder.model.library import Library
from builder.walk.complaint_lines import NOTHING
from builder.walk.diagnosis import before_repair
from builder.walk.fix_words import test_texts
from builder.walk.job_state import CANNOT_TEST, JobState
from builder.walk.measured import measured_check
from builder.walk.measured_lines import evidence_line
from builder.walk.steps_taken import StepTaken
from builder.walk.told import row_of
from builder.walk.tree_rows import TreeTable, VerifyRow
from builder.walk.walk_tables import PROCEDURES, WalkTables
from builder.wording.finding_text import finding_text
from builder.wording.sentences import capitalized

NOT_RUN = re.compile(
    r"\bnot (?:yet )?(?:run|tested|complete|completed|ready|supported)\b|\bincomplete\b",
    re.IGNORECASE,
)
NOT_CONFIRMED, PASSED = "Not confirmed", "passed"
_NOTHING = ": Nothing "  # heard, felt, seen


def verification_lines(
    tables: WalkTables,
    state: JobState,
    taken: Sequence[StepTaken],
    library: Library,
    rest: str = "",
) -> list[str]:
    """Return a line for each test of the fix, and for each reading of a procedure that it ran.

    None where the walk ended without a repair. `rest` is what of the complaint the cause doesn't
    explain: a test that noticed nothing says nothing of that.
    """
    if state.end is None or state.end.kind != "fix":
        return []
    tests = row_of(tables, state.frames[0]).get("verify", [])
    after = tests_of_repair(state, taken)
    if not tests:
        return [f"{NOT_CONFIRMED}: no test is written for this repair."]
    runs = [*_runs(after)]
    lines = []
    asked = test_texts(tables, state, row_of(tables, state.frames[0]))
    for at, test in enumerate(tests):
        run = runs[at] if at < len(runs) else None
        if run is None:
            lines.append(f"Not done: {capitalized(asked[at])}")
            continue
        line = without_rest(_line(tables, test, run, library), rest)
        lines += [line, *_readings(tables, run, library)]
    return lines


def tests_of_repair(state: JobState, taken: Sequence[StepTaken]) -> Sequence[StepTaken]:
    """Return the steps from the repair on."""
    return taken[len(before_repair(state, taken)) :]


def without_rest(line: str, rest: str) -> str:
    """Say of a test that noticed nothing that it leaves out what of the complaint is open."""
    if not rest or rest.casefold() == NOTHING or _NOTHING not in line:
        return line
    return f"{line}, apart from what is not diagnosed yet: {rest}"


def _readings(tables: WalkTables, run: Sequence[StepTaken], library: Library) -> Iterator[str]:
    """Yield what a procedure read after the repair, to stand beside what it read before."""
    for one in run:
        if one.entry.readings and one.entry.inside.startswith(PROCEDURES):
            yield f"By test: {evidence_line(measured_check(tables, one, library))}"


def _runs(after: Sequence[StepTaken]) -> Iterator[Sequence[StepTaken]]:
    """Yield the steps of each test, with its verdict as the last."""
    begun = 0
    for at, one in enumerate(after):
        if one.entry.kind == "fix":
            begun = at + 1
        elif one.entry.kind == "verify":
            yield after[begun : at + 1]
            begun = at + 1


def _line(tables: WalkTables, test: VerifyRow, run: Sequence[StepTaken], library: Library) -> str:
    name = _name(tables, test, run)
    *steps, verdict = run
    checks = [one for one in steps if one.entry.kind == "check"]
    if any(one.entry.result == CANNOT_TEST for one in checks):
        return f"{NOT_CONFIRMED}: {name}, could not be tested"
    own = [one for one in checks if one.entry.step == test.get("step")]
    words = evidence_line(measured_check(tables, own[-1], library)) if own else name
    if _hides_a_monitor(checks):
        return f"{NOT_CONFIRMED}: {words}"
    return f"{capitalized(verdict.entry.result)}: {words}"


def _hides_a_monitor(checks: Sequence[StepTaken]) -> bool:
    """Whether what was seen last is, or may be, a monitor that hasn't run: `not run yet`."""
    last = {(one.entry.inside, one.entry.step): one.entry.result for one in checks}
    return any(NOT_RUN.search(result) for result in last.values())


def _passed_words(procedure: TreeTable) -> str:
    """Name a procedure, by its good word where its title is a question: `Battery: good`."""
    title, words = procedure["title"], procedure.get("returns", [])
    return finding_text(title, words[0]) if title.endswith("?") and words else title


def _name(tables: WalkTables, test: VerifyRow, run: Sequence[StepTaken]) -> str:
    if "text" in test:
        return capitalized(test["text"])
    if "by" in test:
        procedure = tables.shop["procedures"].get(test["by"]["procedure"])
        if procedure is None:
            return test["by"]["procedure"]
        is_passed = run[-1].entry.result == PASSED
        return _passed_words(procedure) if is_passed else procedure["title"]
    steps = tables[run[-1].entry.inside]["steps"]
    return steps[test["step"]]["text"] if test["step"] in steps else test["step"]
