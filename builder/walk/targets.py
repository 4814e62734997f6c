"""Where a walk goes when a step is left: to a step, an item, a caller, another tree, an end.

In: the tables, a state, a `Target`. Out: the state at the new step, or a `Refused` where the table
of another tree is missing. DEVELOPERS.md has the order of these rules under "The walk".
"""

from collections.abc import Mapping
from dataclasses import replace

from builder.graph.runs import with_values
from builder.walk.frames import taken, with_waiting
from builder.walk.job_state import (
    CANNOT_TEST,
    JobState,
    RecordedStep,
    Refused,
    WalkEnd,
    WalkFrame,
    stuck,
)
from builder.walk.list_items import items_of, with_item
from builder.walk.told import row_of, run_key
from builder.walk.tree_rows import Target, VerifyRow, WalkStepRow
from builder.walk.walk_tables import WalkTables

_RETURN = "return: "


def go(
    tables: WalkTables, state: JobState, target: Target, answers: Mapping[str, str] | None = None
) -> JobState | Refused:
    """Leave the step for a target; `answers` is what another tree asks."""
    frame = state.frames[-1]
    if target == "back":
        return come_to(tables, state, frame.came_from.get(frame.step, ""), is_back=True)
    if target == "next":
        return _to_next_item(tables, state)
    if target.startswith(_RETURN):
        return come_out(tables, state, target.removeprefix(_RETURN), is_proof=True)
    if "/" in target:
        return _hand_off(tables, state, target, answers or {})
    return come_to(tables, state, target)


def come_to(
    tables: WalkTables, state: JobState, step: str, *, is_back: bool = False, item: int = 0
) -> JobState | Refused:
    """Come to a step of the same tree; if it is spent, go on at once. `item`: of its list."""
    frame = state.frames[-1]
    row = tables[frame.inside]["steps"].get(step)
    if row is None:
        return stuck(state)
    came_from = frame.came_from if is_back else {**frame.came_from, step: frame.step}
    frame = replace(frame, step=step, came_from=came_from)
    here = replace(state, frames=(*state.frames[:-1], frame))
    items = items_of(tables, here, row)
    count = frame.counts.get(step, 0)
    if (row.get("at_most") or count + 1) <= count or (items is not None and item >= len(items)):
        return _spent(tables, here, row)
    frame = replace(
        frame,
        counts={**frame.counts, step: count + 1},
        items={**frame.items, step: item} if "each" in row else frame.items,
    )
    return arrived(tables, with_item(tables, replace(here, frames=(*state.frames[:-1], frame))))


def _spent(tables: WalkTables, state: JobState, row: WalkStepRow) -> JobState | Refused:
    place = state.frames[-1].place
    if "spent" not in row or place in state.passed:
        return stuck(state)
    return go(tables, replace(state, passed=(*state.passed, place)), row["spent"])


def arrived(tables: WalkTables, state: JobState) -> JobState | Refused:
    """Return the state at a step that a walk has come to: an end is one at once."""
    frame, row = state.frames[-1], row_of(tables, state.frames[-1])
    match row["kind"]:
        case "return":
            return come_out(tables, state, row["word"], is_proof=False)
        case "fix":
            end = WalkEnd(frame.inside, frame.step, "fix")
            return replace(state, end=end, proved={})
        case "stop":
            return replace(state, end=WalkEnd(frame.inside, frame.step, row["stop"]))
        case _:
            return state


def _to_next_item(tables: WalkTables, state: JobState) -> JobState | Refused:
    frame = state.frames[-1]
    step = row_of(tables, frame).get("list_step", "")
    return come_to(tables, state, step, item=frame.items.get(step, 0) + 1)


def _hand_off(
    tables: WalkTables, state: JobState, target: Target, answers: Mapping[str, str]
) -> JobState | Refused:
    """Go on in another tree, from normal; what was proved stays behind."""
    id_, _, step = target.partition("#")
    if id_ not in tables.trees:
        return Refused(f"the tree `{id_}` isn't loaded: open it, then answer again")
    tree = tables.trees[id_]
    filled = {name: with_values(text, state.frames[-1].filled) for name, text in answers.items()}
    there = replace(
        state,
        frames=(WalkFrame(id_, "", filled=filled),),
        left=(state.frames[0], *state.left),
        to_normal=True,
        known=frozenset(),
        proved={},
    )
    return come_to(tables, there, step or tree["start"])


# Procedures


def come_out(
    tables: WalkTables, state: JobState, word: str, *, is_proof: bool
) -> JobState | Refused:
    """Leave a procedure with its word: the result of the check that ran it."""
    procedure, outside = state.frames[-1], replace(state, frames=state.frames[:-1])
    if procedure.verifies:
        return _verified(tables, outside, procedure, word)
    frame, row = outside.frames[-1], row_of(tables, outside.frames[-1])
    if is_proof and "every_time" not in tables[procedure.inside]:
        proof = (word, frame.place)
        outside = replace(outside, proved={**state.proved, run_key(row, frame): proof})
    return with_result(tables, outside, word)


def with_result(
    tables: WalkTables, state: JobState, word: str, *, earlier: str = ""
) -> JobState | Refused:
    """Take a returned word as the result of the check; `earlier`: where it was proved before."""
    frame, row = state.frames[-1], row_of(tables, state.frames[-1])
    result = next((one for one in row.get("results", ()) if one["text"] == word), None)
    if result is None:
        return stuck(state)
    entry = RecordedStep(
        frame.inside,
        frame.step,
        row["kind"],
        word,
        means=result.get("means", ""),
        earlier=earlier,
        at=state.since,
    )
    return leave(tables, replace(state, steps=(*state.steps, entry)), word, result["to"])


def cannot_test(tables: WalkTables, state: JobState) -> JobState | Refused:
    """Leave a check that can't be done; a procedure leaves by the check that runs it."""
    frame, row = state.frames[-1], row_of(tables, state.frames[-1])
    if "cannot_test" in row and not frame.verifies:
        return go(tables, state, row["cannot_test"])
    return _cannot_run(tables, state) if len(state.frames) > 1 else stuck(state)


def _cannot_run(tables: WalkTables, state: JobState) -> JobState | Refused:
    """Leave a procedure, or a check that verifies, that can't be done."""
    frame, outside = state.frames[-1], replace(state, frames=state.frames[:-1])
    if frame.verifies:
        return _verified(tables, outside, frame, "")
    caller = outside.frames[-1]
    entry = RecordedStep(caller.inside, caller.step, "check", CANNOT_TEST, at=state.since)
    return cannot_test(tables, replace(outside, steps=(*outside.steps, entry)))


# Results, and the verification of a repair


def leave(
    tables: WalkTables,
    state: JobState,
    result: str,
    target: Target,
    answers: Mapping[str, str] | None = None,
) -> JobState | Refused:
    """Leave a check with its result; one done to verify a repair goes back to the fix."""
    frame = state.frames[-1]
    if frame.verifies and not frame.inside.startswith("procedures/"):
        return _verified(tables, replace(state, frames=state.frames[:-1]), frame, result)
    return go(tables, state, target, answers)


def verify_next(tables: WalkTables, state: JobState, index: int) -> JobState | Refused:
    """Go to a test after the repair, from normal; after the last one the fix is verified."""
    tests = row_of(tables, state.frames[-1]).get("verify", [])
    if index >= len(tests):
        assert state.end
        end = replace(state.end, verified=bool(tests))
        return replace(state, verifying=None, to_normal=False, end=end)
    here, test = replace(state, verifying=index, to_normal=True), tests[index]
    if "step" in test:
        return _come_to_waiting(tables, with_waiting(tables, here, test["step"]))
    if "by" in test:
        return into_procedure(tables, here, test, verifies=True)
    return here


def _come_to_waiting(tables: WalkTables, state: JobState) -> JobState | Refused:
    frame = state.frames[-1]
    here = replace(state, frames=(*state.frames[:-1], replace(frame, waits="")))
    return come_to(tables, here, frame.waits)


def into_procedure(
    tables: WalkTables, state: JobState, row: WalkStepRow | VerifyRow, *, verifies: bool = False
) -> JobState | Refused:
    """Go to the first step of a procedure."""
    frame, table = state.frames[-1], tables.shop["procedures"].get(row["by"]["procedure"])
    if table is None:
        return stuck(state)
    takes = taken(table, row["by"], frame)
    inner = WalkFrame(table["id"], "", filled=takes, verifies=verifies)
    inside = replace(state, frames=(*state.frames, inner))
    if set(takes.values()) & set(table.get("never_on", ())):
        return _cannot_run(tables, inside)
    return come_to(tables, inside, table["start"])


def _verified(
    tables: WalkTables, state: JobState, frame: WalkFrame, result: str
) -> JobState | Refused:
    """Go on after a check that verifies; of a step that only comes before it, any result does."""
    if frame.aside:
        return _come_to_waiting(tables, state)
    tests, index = row_of(tables, state.frames[-1])["verify"], state.verifying or 0
    return judge_test(tables, state, result in tests[index].get("passes", ()))


def judge_test(tables: WalkTables, state: JobState, passed: bool) -> JobState | Refused:
    """Go on after a test of the repair; one that failed leads to where the fault still is."""
    frame, row = state.frames[-1], row_of(tables, state.frames[-1])
    test = row["verify"][state.verifying or 0]
    words = "passed" if passed else "failed"
    seen = test.get("text") or test.get("step") or test["by"]["procedure"]
    entry = RecordedStep(frame.inside, frame.step, "verify", words, seen=seen, at=state.since)
    state = replace(state, steps=(*state.steps, entry))
    if passed:
        return verify_next(tables, state, (state.verifying or 0) + 1)
    checks = (one["step"] for one in row["verify"] if "step" in one)
    target = row.get("still_there") or next(checks, "")
    if frame.step in frame.failed or not target:
        return stuck(state)
    failed = replace(frame, failed=frame.failed | {frame.step})
    again = replace(state, frames=(*state.frames[:-1], failed), end=None, verifying=None)
    return go(tables, again, target)
