"""A check as rows of the walk's table: its readings, results, and the procedure it runs.

In: a check of a tree. Out: the part of a `WalkStepRow` that only checks have. Readings that name a
spec keep their words (below, within, above spec): what is good depends on the vehicle and the load,
so the walk fills the ranges in.
"""

from dataclasses import replace
from decimal import Decimal
from typing import cast

from builder.model.checks import Check, Reading, Result
from builder.model.library import Library
from builder.model.text import Text
from builder.model.tree import Step, Tree
from builder.walk.compile_branch import target_of
from builder.walk.plain_rows import Row, without_empty
from builder.walk.rows import StepRow
from builder.walk.table import measuring_row, tools_of
from builder.walk.tree_rows import Target, WalkResultRow
from builder.wording.answer_parts import answer_parts


def check_row(tree: Tree, step: Step, check: Check, library: Library) -> Row:
    """Return what a check adds to the row of its step."""
    measured = measuring_row(replace(step, body=_as_numbers(check, library)), tools_of(tree, step))
    figure = check.figure if measured and "figure" in measured else None
    by = {
        "procedure": str(check.by),
        "takes": {str(name): str(text) for name, text in check.with_.items()},
    }
    own = without_empty({
        "several": check.several,
        "told": check.told,
        "cannot_test": target_of(tree, check.cannot_test),
        "figure": measured.get("figure") if measured else None,
        "look_up": str(figure.look_up) if figure else "",
        "specs": {one.name: str(one.spec) for one in check.readings if one.spec},
        "by": by if check.by else None,
    })  # fmt: skip
    return own | {
        "readings": measured["readings"] if measured else [],
        "computed": measured["computed"] if measured else [],
        "results": [
            _result_row(result, measured, at, target_of(tree, result.branch))
            for at, result in enumerate(check.results)
        ],
        "tools": tools_of(tree, step),
    }


def _as_numbers(check: Check, library: Library) -> Check:
    """Return the check with its readings of specs as plain numbers without ranges."""
    names = {one.name for one in check.readings if one.spec}
    if not names:
        return check
    readings = tuple(_as_number(one, library) if one.spec else one for one in check.readings)
    results = tuple(
        replace(one, ranges={name: span for name, span in one.ranges.items() if name not in names})
        for one in check.results
    )
    return replace(check, readings=readings, results=results)


def _as_number(reading: Reading, library: Library) -> Reading:
    """Return a reading of a spec; of a spec that a procedure takes nothing is known yet."""
    spec = library.specs.get(str(reading.spec))
    if spec is None:
        return replace(reading, unit=Text("V"), low=Decimal(0), high=Decimal(0), one_of=())
    return replace(reading, unit=spec.unit, low=spec.low, high=spec.high, one_of=())


def _result_row(result: Result, measured: StepRow | None, at: int, to: Target) -> WalkResultRow:
    more = without_empty({
        "means": str(result.means or ""),
        "parts": [] if result.ranges or result.compares else [*answer_parts(str(result.text))],
        "otherwise": result.otherwise,
        "answers": {str(name): str(text) for name, text in result.with_.items()},
        "places": {str(name): str(word) for name, word in result.compares.items()},
    })  # fmt: skip
    ranges = measured["results"][at]["ranges"] if measured else {}
    return cast("WalkResultRow", {"text": str(result.text), "to": to, "ranges": ranges} | more)
