"""A tree as the table that a walk follows.

In: a `Tree`, and the library for its conditions. Out: a `TreeTable`. A branch to nowhere is ""
there, so that a walk of a tree with mistakes comes to the person to call and never to an exception.
"""

from collections.abc import Mapping
from decimal import Decimal
from typing import cast

from builder.graph.routes import list_step
from builder.graph.vehicle_states import at_odds
from builder.model.checks import Branch, Check, Result
from builder.model.conditions import VehicleState
from builder.model.ends import Fix, Stop
from builder.model.library import Library
from builder.model.tree import Action, Step, Tree
from builder.walk.table import measuring_row, tools_of
from builder.walk.walk_tables import StateRow, Target, TreeTable, WalkResultRow, WalkStepRow

Row = dict[str, object]


def tree_table(tree: Tree, library: Library) -> TreeTable:
    """Compile a tree."""
    asks = {
        str(one.name): {"ask": str(one.ask), "one_of": [*map(str, one.one_of)]} for one in tree.asks
    }
    table = {
        "id": tree.id,
        "title": str(tree.title),
        "revision": tree.revision,
        "start": str(tree.start.id),
        "steps": {str(step.id): _step_row(tree, step, library) for step in tree.steps.values()},
        "asks": asks,
        "lists": {str(name): [*map(str, items)] for name, items in tree.lists.items()},
    }
    return cast("TreeTable", without_empty(table))


def without_empty(row: Mapping[str, object]) -> Row:
    """Leave out what is empty; `False` and "" too."""
    return {key: value for key, value in row.items() if value not in (None, "", False, [], {}, ())}


def minutes_as_text(minutes: Decimal | None) -> str:
    """Return a number of minutes as an exact decimal; "" for none."""
    return f"{minutes:f}" if minutes else ""


def _step_row(tree: Tree, step: Step, library: Library) -> WalkStepRow:
    needs, free_text = _conditions(step, library)
    method = tree.steps.get(step.same_as, step) if step.same_as else step
    row = {
        "kind": step.kind,
        "text": str(step.text),
        "note": str(step.note or ""),
        "when": free_text,
        "needs": needs,
        "write_down": [*map(str, step.write_down)],
        "how_to": str(step.how_to or method.how_to or ""),
        "picture": (str(step.picture.file), str(step.picture.shows)) if step.picture else None,
        "minutes": minutes_as_text(step.minutes or method.minutes),
        "wait": minutes_as_text(step.wait or method.wait),
        "people": int(step.people or 0),
        "put_back": str(step.put_back or ""),
        "hazards": [*map(str, step.hazards)],
        "at_most": int(step.at_most or 0),
        "spent": _target(tree, step.spent),
        "each": (str(step.each[0]), str(step.each[1])) if step.each else None,
        "list_step": _list_step(tree, step),
    }
    return cast("WalkStepRow", without_empty(row | {"people": row["people"] or None}
                                             | {"at_most": row["at_most"] or None})
                | _body_row(tree, step))  # fmt: skip


def _conditions(step: Step, library: Library) -> tuple[list[StateRow], list[str]]:
    """Part the states that a step needs from its conditions in free text.

    States that can't hold together are told as text: a finding has named them already.
    """
    states = [VehicleState(str(word)) for word in step.when if word in library.conditions]
    if any(at_odds(library.conditions, states)):
        return [], [*map(str, step.when)]
    free = [str(word) for word in step.when if word not in library.conditions]
    return [(*state,) for state in states], free


def _body_row(tree: Tree, step: Step) -> Row:
    match step.body:
        case Check() as check:
            return _check_row(tree, step, check)
        case Action(then=then):
            return {"then": _target(tree, then)}
        case Fix() as fix:
            return without_empty({
                "cause": str(fix.cause),
                "verify": [{"text": str(text)} for text in fix.verify],
                "still_there": _target(tree, fix.still_there),
            })  # fmt: skip
        case Stop(kind=kind):
            return {"stop": str(kind)}


def _check_row(tree: Tree, step: Step, check: Check) -> Row:
    tools = tools_of(tree, step)
    measured = measuring_row(step, tools)
    ranges = [result["ranges"] for result in measured["results"]] if measured else []
    results = [
        _result_row(tree, result, ranges[at] if measured else {})
        for at, result in enumerate(check.results)
    ]
    figure = check.figure if measured and "figure" in measured else None
    own = without_empty({
        "several": check.several,
        "cannot_test": _target(tree, check.cannot_test),
        "figure": measured.get("figure") if measured else None,
        "look_up": str(figure.look_up) if figure else "",
    })  # fmt: skip
    return own | {
        "readings": measured["readings"] if measured else [],
        "computed": measured["computed"] if measured else [],
        "results": results,
        "tools": tools,
    }


def _result_row(tree: Tree, result: Result, ranges: Mapping[str, object]) -> WalkResultRow:
    row = without_empty({
        "means": str(result.means or ""),
        "otherwise": result.otherwise,
        "answers": {str(name): str(text) for name, text in result.with_.items()},
    })  # fmt: skip
    fixed = {"text": str(result.text), "to": _target(tree, result.branch), "ranges": dict(ranges)}
    return cast("WalkResultRow", fixed | row)


def _target(tree: Tree, branch: Branch | None) -> Target:
    if branch is None:
        return ""
    known = branch.back or branch.next_item or branch.tree or branch.step in tree.steps
    return str(branch.text) if known else ""


def _list_step(tree: Tree, step: Step) -> str:
    """Return the step that `next` goes to, where a branch of the step is `next`."""
    match step.body:
        case Check(results=results):
            branches = [result.branch for result in results]
        case Action(then=then):
            branches = [then] if then else []
        case _:
            branches = []
    return list_step(tree, step) or "" if any(branch.next_item for branch in branches) else ""
