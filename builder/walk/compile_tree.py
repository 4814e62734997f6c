"""A tree or a procedure as the table that a walk follows.

In: a `Tree`, and the library for its conditions and procedures. Out: a `TreeTable`. A branch to
nowhere is "" there, so that a walk of a tree with mistakes comes to the person to call and never
to an exception.
"""

from typing import cast

from builder.graph.needed_states import part_at
from builder.graph.vehicle_states import at_odds
from builder.model.checks import Check
from builder.model.conditions import Takes, VehicleState
from builder.model.ends import Fix, Return, Stop
from builder.model.library import Library
from builder.model.procedures import FOLDER
from builder.model.tree import Action, Need, Question, Step, Tree, Where
from builder.plan.estimate_options import estimate_options
from builder.walk.compile_branch import target_of, target_of_next
from builder.walk.compile_check import check_row
from builder.walk.compile_verify import verify_row
from builder.walk.estimate_lines import hours_text
from builder.walk.plain_rows import Row, minutes_as_text, plain_texts, without_empty
from builder.walk.tree_rows import AskRow, StateRow, TreeTable, WalkStepRow, WhereRow
from builder.wording.several_places import has_several_places

CODES_NOTED = "DTCs and status"


def tree_table(tree: Tree, library: Library) -> TreeTable:
    """Compile a tree, or the tree of a procedure."""
    asks = {str(one.name): _ask_row(one) for one in tree.asks}
    procedure = library.procedures.get(tree.id.removeprefix(f"{FOLDER}/"))
    is_procedure = procedure is not None and procedure.tree.id == tree.id
    table = {
        "title": str(tree.title),
        "asks": asks,
        "defaults": {str(one.name): str(one.default) for one in tree.asks if one.default},
        "lists": {str(name): plain_texts(items) for name, items in tree.lists.items()},
        "drive": str(tree.drive or ""),
        "why": str(tree.why or ""),
        "returns": plain_texts(procedure.returns) if procedure and is_procedure else [],
        "never_on": plain_texts(procedure.never_on) if procedure and is_procedure else [],
        "every_time": bool(procedure and is_procedure and procedure.every_time),
    }
    steps = {str(step.id): _step_row(tree, step, library) for step in tree.steps.values()}
    if procedure and is_procedure and procedure.note:
        # The tech reads it at the first step; only the procedure's page has a head of its own.
        first = steps[str(tree.start.id)]
        first["note"] = " ".join(filter(None, [str(procedure.note), first.get("note", "")]))
    fixed = {
        "id": tree.id,
        "revision": tree.revision,
        "start": str(tree.start.id),
        "steps": steps,
    }
    return cast("TreeTable", fixed | without_empty(table))


def _ask_row(question: Question) -> AskRow:
    codes = {str(code): str(answer) for code, answer in question.codes.items()}
    row: AskRow = {"ask": str(question.ask), "one_of": plain_texts(question.one_of)}
    return {**row, "codes": codes} if codes else row


def _step_row(tree: Tree, step: Step, library: Library) -> WalkStepRow:
    method = tree.steps.get(step.same_as, step) if step.same_as else step
    fixed = {"kind": step.kind, "text": str(step.text)}
    own = {
        "do": plain_texts(step.do or method.do),
        "where": where_row(step.where or method.where),
        "how_to": str(step.how_to or method.how_to or ""),
        "picture": (str(step.picture.file), str(step.picture.shows)) if step.picture else None,
        "minutes": minutes_as_text(step.minutes or method.minutes),
        "wait": minutes_as_text(step.wait or method.wait),
        "people": int(step.people) if step.people else None,
        "put_back": str(step.put_back or ""),
        "hazards": plain_texts(step.hazards),
        "hook_up": str(step.hook_up) if step.hook_up in library.conditions else "",
        "at_most": int(step.at_most) if step.at_most else None,
        "spent": target_of(tree, step.spent),
        "each": (str(step.each[0]), str(step.each[1])) if step.each else None,
        "after": [str(one) for one in step.after if one in tree.steps],
        "list_step": target_of_next(tree, step),
        "note": str(step.note or ""),
        "write_down": _write_down(step),
        "sets_up": any(deed.is_setup for deed in step.does),
    }
    row = fixed | without_empty(own) | _needs(step, library) | _body_row(tree, step, library)
    return cast("WalkStepRow", row)


def _write_down(step: Step) -> list[str]:
    """Return what is to be written down: where DTCs are saved, these with their status."""
    own = plain_texts(step.write_down)
    saves = any(deed.verb == "record-codes" for deed in step.does)
    return own if not saves or any("DTC" in one for one in own) else [*own, CODES_NOTED]


def _needs(step: Step, library: Library) -> Row:
    """Return the states that a step needs, and its conditions in free text.

    States that can't hold together are told as text: a finding has named them already.
    """
    known = [need for need in step.needs if is_state(need, library)]
    states = [state_row(need, step.where, library) for need in known]
    unknown = [str(need.condition) for need in step.needs if need not in known]
    free = [*plain_texts(step.when), *unknown]
    if any(at_odds(library.conditions, (VehicleState(*state) for state in states))):
        return {"when": [*free, *(str(need.condition) for need in known)]}
    return without_empty({"needs": states, "when": free})


def is_state(need: Need, library: Library) -> bool:
    """Whether a need names a condition of the shop, with what that takes."""
    condition = library.conditions.get(str(need.condition))
    return condition is not None and bool(condition.takes) == bool(need.value)


def state_row(need: Need, where: Where | None, library: Library) -> StateRow:
    """Return a needed state; a load is at the part where the step works."""
    value = str(need.value or "")
    if library.conditions[need.condition].takes is Takes.CURRENT:
        return str(need.condition), part_at(where), value
    return str(need.condition), value, ""


def where_row(where: Where | None) -> WhereRow:
    """Return where a step works."""
    if where is None:
        return {}
    row = {
        "phrase": str(where.phrase or ""),
        "part": str(where.part or ""),
        "connector": str(where.connector or ""),
        "pins": plain_texts(where.pins),
        "fuse": str(where.fuse or ""),
    }
    return cast("WhereRow", without_empty(row))


def _body_row(tree: Tree, step: Step, library: Library) -> Row:
    match step.body:
        case Check() as check:
            return check_row(tree, step, check, library)
        case Action(then=then):
            return {"then": target_of(tree, then)}
        case Fix() as fix:
            return _fix_row(tree, step, fix, library)
        case Stop() as stop:
            words = {"drive": str(stop.drive or ""), "why": str(stop.why or "")}
            return {"stop": str(stop.kind)} | without_empty(words)
        case Return():
            return {"word": str(step.text)}


def _fix_row(tree: Tree, step: Step, fix: Fix, library: Library) -> Row:
    verify = [verify_row(tree, one, library) for one in fix.verify]
    options = estimate_options(tree, str(step.id), library)
    return without_empty({
        "options": [[one.id, one.option] for one in options if not one.not_offered],
        "hours": hours_text(options),
        "part_names": [str(one.part) for one in fix.parts],
        "cause": str(fix.cause),
        "tell": str(fix.tell or ""),
        "verify": verify,
        "still_there": target_of(tree, fix.still_there),
        "replaces": str(fix.replaces.module) if fix.replaces else "",
        "torques": plain_texts(fix.torques),
        "several_places": has_several_places(str(step.text), (str(one.part) for one in fix.parts)),
        "proved_by": [[str(one.step), plain_texts(one.results)] for one in fix.proved_by],
        "drive": str(fix.drive or ""),
        "why": str(fix.why or ""),
    })  # fmt: skip
