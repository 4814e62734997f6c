"""What on the way to a fix speaks for it, beside the check that led there.

In: the tables, the end, the steps before the repair. Out: the steps, in their order: a reading that
was out of its limits; what a test of the repair looks at again, and found wrong before it; a
finding on which setup was done. A good reading alone convinces nobody: the bad one comes first.
"""

from collections.abc import Iterator, Sequence

from builder.model.library import Library
from builder.walk.job_state import CANNOT_TEST, NONE_OF_THESE, WalkEnd
from builder.walk.measured import measured_check
from builder.walk.procedure_checks import checks_of_run
from builder.walk.steps_taken import StepTaken
from builder.walk.walk_tables import PROCEDURES, WalkTables


def path_proofs(
    tables: WalkTables,
    end: WalkEnd,
    before: Sequence[StepTaken],
    shown: Sequence[StepTaken],
    library: Library,
) -> list[StepTaken]:
    """Return the steps that led to a fix and aren't `shown` yet, each finding once."""
    checks = [*_answered(before)]
    since = max((at for at, one in enumerate(before) if one.entry.kind == "fix"), default=0)
    proofs = [
        one
        for at, one in checks
        if at >= since
        and (
            _is_out(tables, one, before, library)
            or _fails_a_test(tables, end, one)
            or _was_set_up(tables, one, before[at + 1 :])
        )
    ]
    known = {_finding(one) for one in shown}
    return [*{_finding(one): one for one in proofs if _finding(one) not in known}.values()]


def _answered(before: Sequence[StepTaken]) -> Iterator[tuple[int, StepTaken]]:
    """Yield the checks of trees that were answered here, each with its place among the steps."""
    for at, one in enumerate(before):
        is_of_tree = one.entry.kind == "check" and not one.entry.inside.startswith(PROCEDURES)
        is_seen = not one.entry.stated and one.entry.result not in (CANNOT_TEST, NONE_OF_THESE)
        if is_of_tree and is_seen and not one.verifies:
            yield at, one


def _finding(one: StepTaken) -> tuple[str, ...]:
    return one.entry.inside, one.entry.step, one.entry.item, one.entry.result


def _is_out(
    tables: WalkTables, one: StepTaken, before: Sequence[StepTaken], library: Library
) -> bool:
    """Whether a reading is out of its limits, of a procedure only where that found a fault."""
    if measured_check(tables, one, library).is_out:
        return True
    run = [] if is_good_word(tables, one) else checks_of_run(before, one)
    return any(measured_check(tables, inner, library).is_out for inner in run)


def is_good_word(tables: WalkTables, one: StepTaken) -> bool:
    """Whether a check was left with the first word of its procedure's `returns`: it passes."""
    by = tables[one.entry.inside]["steps"][one.entry.step].get("by")
    table = tables.shop["procedures"].get(by["procedure"]) if by else None
    return table is not None and one.entry.result in table.get("returns", [])[:1]


def _fails_a_test(tables: WalkTables, end: WalkEnd, one: StepTaken) -> bool:
    """Whether a test of the repair is this check, and would not have passed."""
    if one.entry.inside != end.inside:
        return False
    tests = tables[end.inside]["steps"][end.step].get("verify", [])
    wanted = [test.get("passes", []) for test in tests if test.get("step") == one.entry.step]
    return bool(wanted) and all(one.entry.result not in passes for passes in wanted)


def _was_set_up(tables: WalkTables, one: StepTaken, following: Sequence[StepTaken]) -> bool:
    """Whether a module was set up because of what was found: that step came next."""
    if not following or following[0].entry.inside != one.entry.inside:
        return False
    steps = tables[one.entry.inside]["steps"]
    came, went = (steps[it.entry.step].get("sets_up", False) for it in (one, following[0]))
    return went and not came and one.entry.result != "yes"
