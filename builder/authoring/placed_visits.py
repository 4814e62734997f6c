"""Each visit of a path beside the step of the shop that it was, and the result it was left by.

In: a `WalkedPath`, the shop's trees. Out: `PlacedVisit`s. Where the file has no words of a result,
it is the one that the readings fit, or else the one that leads to the next visit.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from builder.authoring.source_steps import SourceStep, SourceTrees
from builder.authoring.walked_path import Visit, WalkedPath
from builder.graph.runs import with_values
from builder.model.checks import Check, Result
from builder.model.ranges import INFINITY
from builder.model.tree import Action, Tree
from builder.walk.job_state import CANNOT_TEST, NONE_OF_THESE
from builder.walk.read_codes import answers_of_codes
from builder.walk.walk_tables import PROCEDURES

LONGEST_VALUE = 40  # characters that may fill a placeholder, so that the text still fits
_QUANTITY = re.compile(r"(?P<value>-?[0-9]+(\.[0-9]+)?|OL)(?: (?P<unit>\S+))?")


@dataclass(frozen=True, slots=True)
class PlacedVisit:
    """A visit; `source` is None where the shop has no such step any more."""

    visit: Visit
    source: SourceStep | None
    kind: str  # check, action, fix, or stop
    exit: str = ""  # the result's words as the tree has them, or `cannot test`; "" for none
    filled: Mapping[str, str] | None = None  # values by the name of their placeholder


def placed_visits(path: WalkedPath, trees: SourceTrees) -> tuple[PlacedVisit, ...]:
    """Return the visits with their sources; a procedure that never came back is its check."""
    sources = [_source(trees, one) for one in path.visits]
    visits = list(path.visits)
    if visits and visits[-1].inside.startswith(PROCEDURES):
        unfinished, before = visits.pop(), [*zip(visits, sources, strict=False)]
        caller = _caller(unfinished.inside, before, trees, path.tree)
        sources = sources[:-1]
        if caller:
            sources.append(caller)
            visits.append(replace(unfinished, inside=caller.tree.id, step=str(caller.step.id)))
    return tuple(_placed(visits, sources, path.asked))


def _source(trees: SourceTrees, visit: Visit) -> SourceStep | None:
    source = trees.step(visit.inside, visit.step)
    return source if source and visit.kind in ("", source.step.kind) else None


def _caller(
    inside: str,
    before: Sequence[tuple[Visit, SourceStep | None]],
    trees: SourceTrees,
    first_tree: str,
) -> SourceStep | None:
    """Return the check that ran a procedure: the one that the step before led to, if it did."""
    visit, last = before[-1] if before else (None, None)
    tree = last.tree if last else trees.tree(first_tree)
    if tree is None:
        return None
    name = inside.removeprefix(PROCEDURES)
    steps = tree.steps.values()
    callers = [one.id for one in steps if isinstance(one.body, Check) and one.body.by == name]
    led_to = _led_to(visit, last) if visit and last else None
    chosen = led_to if led_to in callers else next(iter(callers), None)
    return trees.step(tree.id, str(chosen)) if chosen else None


def _led_to(visit: Visit, source: SourceStep) -> str | None:
    body = source.step.body
    if isinstance(body, Action):
        return body.then.step if body.then else None
    met = _met(visit, source, None)
    return met.branch.step if met else None


def _placed(
    visits: Sequence[Visit], sources: Sequence[SourceStep | None], asked: Mapping[str, str]
) -> Iterator[PlacedVisit]:
    values = dict(asked)
    for at, (visit, source) in enumerate(zip(visits, sources, strict=True)):
        following = visits[at + 1] if at + 1 < len(visits) else None
        if source is None:
            kind = visit.kind or ("action" if visit.result == "done" else "check")
            yield PlacedVisit(visit, None, kind, visit.result if kind == "check" else kind)
            continue
        values = _with_answers(source.tree, values)
        item = {str(source.step.each[0]): visit.item} if source.step.each else {}
        met = _met(visit, source, following)
        words = str(met.text) if met else visit.result
        kind = source.step.kind
        yield PlacedVisit(visit, source, kind, words if kind == "check" else kind,
                          _short({**values, **item}))  # fmt: skip
        if met and met.branch.tree:
            given = {name: with_values(text, values) for name, text in met.with_.items()}
            values = {**values, **given}


def _short(values: Mapping[str, str]) -> dict[str, str]:
    return {name: text for name, text in values.items() if 0 < len(text) <= LONGEST_VALUE}


def _with_answers(tree: Tree, values: Mapping[str, str]) -> dict[str, str]:
    """Return the values; a DTC that was typed stands for the answer that it means to the tree."""
    answers = dict(values)
    for question in tree.asks:
        name = str(question.name)
        if name in answers and question.one_of and answers[name] not in question.one_of:
            codes = {str(code): str(answer) for code, answer in question.codes.items()}
            meant = answers_of_codes(codes, answers[name])
            answers[name] = meant[0] if meant else answers[name]
    return answers


def _met(visit: Visit, source: SourceStep, following: Visit | None) -> Result | None:
    body = source.step.body
    if not isinstance(body, Check) or visit.result in (CANNOT_TEST, NONE_OF_THESE):
        return None
    if visit.result:
        return next((one for one in body.results if one.text == visit.result), None)
    fits = [one for one in body.results if visit.readings and _covers(one, body, visit.readings)]
    leads = [one for one in body.results if following and _leads_to(one, following)]
    return next(iter([*fits, *leads]), None)


def _covers(result: Result, check: Check, readings: Mapping[str, str]) -> bool:
    """Whether a result has a range for every reading it names, in their units, and all fit."""
    units = {one.name: str(one.unit) for one in check.readings}
    values = {
        name: INFINITY if match["value"] == "OL" else Decimal(match["value"])
        for name, text in readings.items()
        if (match := _QUANTITY.fullmatch(text))
        and match["unit"] in (None, units.get(name))
    }  # fmt: skip
    ranges = result.ranges
    return bool(ranges) and all(
        name in values and span.contains(values[name]) for name, span in ranges.items()
    )


def _leads_to(result: Result, following: Visit) -> bool:
    branch = result.branch
    if branch.tree:
        return branch.tree == following.inside and branch.step in (None, following.step)
    return branch.step == following.step
