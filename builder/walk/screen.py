"""What a walk shows at its step, computed from the tables and the state alone.

In: `WalkTables`, a `JobState`. Out: a map for JSON. What would be empty is left out; texts have
their placeholders filled in.

    phase       start, fill, step, verify, end, paused
    in, step    where the walk is; with `kind` and `text` of the step
    inside      titles, from the tree to the procedure that runs
    item        the item of the list that is gone through
    asks        in phase fill, what is to be filled in: {"name", "ask", "one_of"}; `codes` are DTCs
                that may be typed instead, `offered` the answers of those read so far
    lines       what to do before the answer: {"text", "of", "ticked"}; `of` is change, do, after
                (a change after the lines to hook up) or put back; `tick` counts them from 0. At a
                fix: the repair, then what to put back before it is verified
    now         texts of the states that hold at the step
    hazards     {"id", "full"}, most severe first; full: new, or DANGER; else one line
    unread      hazards to acknowledge before the step is answered or done
    when, note, write_down        as in the step
    at          where to work: {"phrase"}, {"connector", "where", "pin", "role", "wire", ...},
                {"fuse", "box", "amps", "feeds"}, or what was noted: {"name", "noted"}
    torques     of a fix: {"name", "text", "note"}
    minutes, wait                 of the step and its changes, as text
    visit       [2, 3]: the second time, of at most three
    passed      texts of the steps that were spent on the way here
    readings    what to read, with the specs to look up first: {"name", "unit", "phrases"}
    look_up     the spec to look up, in words
    results     {"text", "means"}, in the order of the step
    ranges      by reading with a spec, the good range as two cuts
    procedure   of a check with `by`: its title
    earlier     what the same procedure proved earlier in the job: {"word", "step"}
    tests       at a fix, before it is done: in words what will verify it
    verify      while a repair is tested: {"index", "count", "text", "passes"}; `text` in phase
                verify, `passes` the results that pass in a check
    cause, tell of a fix, with the readings that they quote
    end         like `ended` in the record; `call` is the person to call
    rejoin      the step to go back to, in the tree that handed off to this one
    drive, why  what holds for driving the vehicle as it is
"""

from decimal import Decimal
from typing import Any

from builder.graph.change import ToldLine
from builder.graph.runs import with_values
from builder.walk.fix_words import drive_of, quoting, test_texts, torque_rows
from builder.walk.job_state import JobState, is_over, is_repairing, judges_in_words
from builder.walk.list_items import items_of
from builder.walk.plain_rows import without_empty
from builder.walk.record import end_row
from builder.walk.spec_ranges import good_ranges, with_ranges
from builder.walk.to_fill import asks_at
from builder.walk.told import Plan, named, plan_of, planned_lines, proved_elsewhere, row_of
from builder.walk.told_hazards import hazards_at, in_full, unread
from builder.walk.tree_rows import WalkStepRow
from builder.walk.walk_tables import WalkTables
from builder.walk.where import where_rows


def screen(tables: WalkTables, state: JobState) -> dict[str, Any]:
    """Return what is shown."""
    if not state.tree:
        return {"phase": "start"}
    frame = state.frames[-1]
    row = row_of(tables, frame)
    where = {
        "phase": _phase(tables, state),
        "in": frame.inside,
        "step": frame.step,
        "kind": row["kind"],
        "inside": [tables[one.inside]["title"] for one in state.frames],
    }
    if state.paused or where["phase"] == "fill":
        return where | without_empty({"asks": asks_at(tables, state)})
    plan = plan_of(tables, state)
    parts = (
        _words(tables, state, row),
        _caution_and_lines(tables, state, plan),
        _answers(tables, state, row),
        _progress(tables, state, row),
        _minutes(row, plan),
        _end(tables, state, row),
    )
    return where | without_empty({key: value for part in parts for key, value in part.items()})


def _phase(tables: WalkTables, state: JobState) -> str:
    if state.paused:
        return "paused"
    if asks_at(tables, state):
        return "fill"
    if judges_in_words(state):
        return "verify"
    return "end" if is_over(state) else "step"


def _words(tables: WalkTables, state: JobState, row: WalkStepRow) -> dict[str, Any]:
    filled = named(tables, state.frames[-1])
    texts = {"text": row["text"], "note": row.get("note", "")}
    lists = {"when": row.get("when", []), "write_down": row.get("write_down", [])}
    return {
        **{key: with_values(text, filled) for key, text in texts.items()},
        **{key: [with_values(text, filled) for text in items] for key, items in lists.items()},
        "at": [without_empty(one) for one in where_rows(tables, state, row)],
        "torques": torque_rows(tables, state, row),
    }


def _caution_and_lines(tables: WalkTables, state: JobState, plan: Plan) -> dict[str, Any]:
    hazards = hazards_at(tables, state, plan)
    texts = ((held, tables.conditions[held.condition].text or "") for held in plan.states)
    lines = (ToldLine(str(text), held.part, held.value) for held, text in texts if text)
    return {
        "lines": [
            {"text": one.text, "of": one.of, "ticked": line in state.ticked}
            for line, one in enumerate(planned_lines(tables, state, plan))
        ],
        "now": [line.words(tables.shop["parts"]) for line in lines],
        "hazards": [{"id": one, "full": in_full(tables, state, one)} for one in hazards],
        "unread": [*unread(tables, state, hazards)],
    }


def _answers(tables: WalkTables, state: JobState, row: WalkStepRow) -> dict[str, Any]:
    filled = named(tables, state.frames[-1])
    results = [
        without_empty(
            {
                "text": with_values(one["text"], filled),
                "means": with_values(one.get("means", ""), filled),
            }
        )
        for one in row.get("results", ())
    ]
    measured = {
        "results": results,
        "readings": _readings(with_ranges(tables, state, row)),
        "look_up": row.get("look_up", ""),
        "ranges": good_ranges(tables, state, row),
    }
    return measured | (_procedure(tables, state, row) if "by" in row else {})


def _procedure(tables: WalkTables, state: JobState, row: WalkStepRow) -> dict[str, Any]:
    procedure = tables.shop["procedures"].get(row["by"]["procedure"])
    proof = proved_elsewhere(state, row)
    return {
        "procedure": procedure["title"] if procedure else "",
        "earlier": dict(zip(("word", "step"), proof, strict=True)) if proof else None,
    }


def _readings(row: WalkStepRow) -> list[dict[str, Any]]:
    readings = row.get("readings", [])
    specs = [{"name": name, "unit": readings[0]["unit"]} for name in row.get("figure", ())]
    return specs + [
        {"name": one["name"], "unit": one["unit"]}
        | ({"phrases": one["phrases"]} if "phrases" in one else {})
        for one in readings
    ]


def _progress(tables: WalkTables, state: JobState, row: WalkStepRow) -> dict[str, Any]:
    frame = state.frames[-1]
    items = items_of(tables, state, row)
    return {
        "item": items[frame.items[frame.step]] if items else "",
        "visit": [frame.counts.get(frame.step, 1), row["at_most"]] if "at_most" in row else None,
        "passed": [
            tables[inside]["steps"][step]["text"]
            for inside, _, step in (place.rpartition("#") for place in state.passed)
        ],
        "verify": _test(tables, state),
    }


def _test(tables: WalkTables, state: JobState) -> dict[str, Any]:
    """Return which test after the repair it is, and what passes."""
    if state.verifying is None:
        return {}
    tests = row_of(tables, state.frames[0])["verify"]
    test = tests[state.verifying]
    return {
        "index": state.verifying,
        "count": len(tests),
        "text": test.get("text", ""),
        "passes": test.get("passes", []),
    }


def _minutes(row: WalkStepRow, plan: Plan) -> dict[str, Any]:
    """Return the minutes of the step and its changes, without zeros at the end."""
    work = Decimal(row.get("minutes", 0)) + sum(change.minutes for change in plan.every)
    wait = Decimal(row.get("wait", 0)) + sum(change.wait for change in plan.every)
    return {"minutes": _digits(work), "wait": _digits(wait)}


def _digits(value: Decimal) -> str:
    return f"{value.normalize():f}" if value else ""


def _end(tables: WalkTables, state: JobState, row: WalkStepRow) -> dict[str, Any]:
    whether, why = drive_of(tables, state)
    words: dict[str, Any] = {"drive": whether, "why": why}
    if not state.end:
        return words
    is_fixed = state.end.kind == "fix" and state.end.verified is not None
    return words | {
        "cause": quoting(tables, state, row.get("cause", "")),
        "tell": quoting(tables, state, row.get("tell", "")),
        "tests": test_texts(tables, state, row) if is_repairing(state) else [],
        "end": end_row(state.end),
        "call": dict(tables.shop["stuck"]) if state.end.kind == "stuck" else None,
        "rejoin": state.left[0].place if is_fixed and state.left else "",
    }
