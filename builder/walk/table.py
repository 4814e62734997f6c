"""The checks of a tree that measure something, as one table.

In: a `Tree`, and the library for what its tools can tell. Out: a `Table`, plain lists and maps that
JSON can carry. All numbers are exact decimals as text; `Infinity` is over the instrument's range.

A range is two cuts `[value, after]`: just before a value (0) or just after it (1). Where a range
goes on to the end of all that can be read, its cut lies at `-Infinity` or `Infinity`, and a reading
that a result takes whole is left out. In a check against the maker's figure the value of a cut is
the name of what was looked up: `from` and `to` of a band, or `limit`.
"""

from collections.abc import Iterator, Mapping
from decimal import Decimal
from typing import NotRequired, TypedDict

from builder.model.knowledge import InstrumentRange, Tool
from builder.model.library import Library
from builder.model.ranges import BOTTOM, EVERYTHING, OVER, TOP, Cut, Range, between
from builder.model.tree import Check, Computed, Reading, Result, Step, Tree
from builder.trade.expressions import Compiled, bounds, compiled, parse, unit_of
from builder.trade.instruments import Accuracy, parse_accuracy
from builder.trade.mistake import Mistake
from builder.trade.units import same_kind, unit

Side = list[list[str | int]]  # the two cuts of a range
# unit, from, to, step; then the error: percent, last digits, fixed
Reads = tuple[str, str, str, str, str, str, str]


class ReadingRow(TypedDict):
    """A value to be typed in; `phrases` are there to choose from instead of a number."""

    name: str
    unit: str
    low: str
    high: str
    phrases: NotRequired[list[str]]


class ComputedRow(TypedDict):
    """A value worked out from the readings, and from computed ones above it."""

    name: str
    unit: str
    form: Compiled


class ResultRow(TypedDict):
    """What a result takes of each reading it names, and where it leads."""

    ranges: dict[str, Side]
    to: str
    otherwise: NotRequired[bool]  # takes what the results above it leave


class StepRow(TypedDict):
    """One check; `figure` names what is to be looked up first, in the unit of the reading."""

    readings: list[ReadingRow]
    computed: list[ComputedRow]
    results: list[ResultRow]
    tools: list[str]
    figure: NotRequired[list[str]]


class ToolRow(TypedDict):
    """A tool and what it reads of the kinds that this tree asks for."""

    name: str
    reads: list[Reads]


class Table(TypedDict):
    """The steps by id, and the tools that they name."""

    steps: dict[str, StepRow]
    tools: dict[str, ToolRow]


_FROM, _TO, _LIMIT = "from", "to", "limit"
_FIGURES = {"band": [_FROM, _TO], "limit": [_LIMIT]}
_LOWEST: list[str | int] = ["-Infinity", 0]
_HIGHEST: list[str | int] = ["Infinity", 1]
_OF_A_FIGURE: Mapping[tuple[str, str], Side] = {
    ("band", "below the figure"): [_LOWEST, [_FROM, 0]],
    ("band", "within the figure"): [[_FROM, 0], [_TO, 1]],
    ("band", "above the figure"): [[_TO, 1], _HIGHEST],
    ("limit", "below the figure"): [_LOWEST, [_LIMIT, 0]],
    ("limit", "at most the figure"): [_LOWEST, [_LIMIT, 1]],
    ("limit", "at least the figure"): [[_LIMIT, 0], _HIGHEST],
    ("limit", "above the figure"): [[_LIMIT, 1], _HIGHEST],
}


def walk_table(tree: Tree, library: Library) -> Table:
    """Write down every check of a tree that has readings or is held against a figure."""
    steps: dict[str, StepRow] = {}
    kinds: set[str] = set()
    for step in tree.steps.values():
        row = _step(step, _tools(tree, step))
        if row:
            steps[str(step.id)] = row
            kinds.update(one["unit"] for one in row["readings"] if one["unit"])
    named = dict.fromkeys(id_ for row in steps.values() for id_ in row["tools"])
    tools = {id_: _tool(library.tools[id_], kinds) for id_ in named if id_ in library.tools}
    return {"steps": steps, "tools": {id_: row for id_, row in tools.items() if row["reads"]}}


def _tools(tree: Tree, step: Step) -> list[str]:
    """Return the tools of a step; with the method of another step come its tools."""
    method = tree.steps.get(step.same_as) if step.same_as else None
    return [str(id_) for id_ in step.tools or (method.tools if method else ())]


def _step(step: Step, tools: list[str]) -> StepRow | None:
    check = step.body
    if not isinstance(check, Check):
        return None
    if check.figure:
        return _against_figure(check, tools)
    if not check.readings or any(unit(one.unit) is None for one in _measured(check)):
        return None
    axes = {one.name: _all_of(one) for one in check.readings}
    computed = list(_computed_rows(check, axes))
    if len(computed) < len(check.computed):
        return None  # a formula that cannot be worked out is a finding; the page shows no form
    return {
        "readings": [_reading(one) for one in check.readings],
        "computed": computed,
        "results": [_result(check, one, axes) for one in check.results],
        "tools": tools,
    }


def _measured(check: Check) -> Iterator[Reading]:
    return (one for one in check.readings if not one.one_of)


def _against_figure(check: Check, tools: list[str]) -> StepRow | None:
    figure = check.figure
    if not figure or unit(figure.unit) is None:
        return None
    sides = [_OF_A_FIGURE.get((figure.kind, str(one.said))) for one in check.results]
    return {
        "figure": _FIGURES[figure.kind],
        "readings": [
            {"name": "", "unit": _symbol(figure.unit), "low": "-Infinity", "high": "Infinity"}
        ],
        "computed": [],
        "results": [
            {"ranges": {"": side} if side else {}, "to": str(one.branch.text)}
            for side, one in zip(sides, check.results, strict=True)
        ],
        "tools": tools,
    }


def _symbol(text: str) -> str:
    known = unit(text)
    return known.symbol if known else text


def _all_of(reading: Reading) -> Range:
    """Return all that a reading can be; an instrument that can go over its range may show OL."""
    if reading.to_over:
        return Range(Cut(reading.low, after=False), OVER.high)
    return between(reading.low, reading.high)


def _reading(reading: Reading) -> ReadingRow:
    row: ReadingRow = {
        "name": reading.name,
        "unit": "" if reading.one_of else _symbol(reading.unit),
        "low": _text(reading.low),
        "high": _text(reading.high),
    }
    if reading.one_of:
        row["phrases"] = [str(phrase) for phrase in reading.one_of]
    return row


def _computed_rows(check: Check, axes: dict[str, Range]) -> Iterator[ComputedRow]:
    """Yield the computed readings; what each can be is added to the axes."""
    units = {one.name: _symbol(one.unit) for one in check.readings}
    for one in check.computed:
        formula = parse(one.expression)
        if isinstance(formula, Mistake) or not set(formula.names) <= axes.keys():
            return
        found = unit_of(formula, units)
        units[str(one.name)] = "" if isinstance(found, Mistake) else found
        axes[str(one.name)] = _all_of_computed(one, axes)
        yield {"name": str(one.name), "unit": units[str(one.name)], "form": compiled(formula)}


def _all_of_computed(computed: Computed, axes: Mapping[str, Range]) -> Range:
    formula = parse(computed.expression)
    ends = {name: (side.low.value, side.high.value) for name, side in axes.items()}
    found = formula if isinstance(formula, Mistake) else bounds(formula, ends)
    return EVERYTHING if isinstance(found, Mistake) else between(*found)


def _result(check: Check, result: Result, axes: Mapping[str, Range]) -> ResultRow:
    ranges = {
        name: _side(check, name, said, axes[name])
        for name, said in result.ranges.items()
        if name in axes
    }
    row: ResultRow = {
        "ranges": {name: side for name, side in ranges.items() if side != [_LOWEST, _HIGHEST]},
        "to": str(result.branch.text),
    }
    if result.otherwise:
        row["otherwise"] = True
    return row


def _side(check: Check, name: str, said: Range, domain: Range) -> Side:
    """Write a range; `above 5` takes OL too, unless a result of the check says `OL`."""
    says_over = any(one.ranges.get(name) == OVER for one in check.results)
    to_the_end = said.high >= domain.high or (said.high == TOP and not says_over)
    low = _LOWEST if said.low <= max(domain.low, BOTTOM) else _cut(said.low)
    return [low, _HIGHEST if to_the_end else _cut(said.high)]


def _cut(cut: Cut) -> list[str | int]:
    return [_text(cut.value), int(cut.after)]


def _text(value: Decimal) -> str:
    return f"{value:f}"


def _tool(tool: Tool, kinds: set[str]) -> ToolRow:
    reads = [_reads(one) for one in tool.reads if any(same_kind(one.unit, kind) for kind in kinds)]
    return {"name": str(tool.name), "reads": reads}


def _reads(of: InstrumentRange) -> Reads:
    """Write what a tool reads; without a stated error it may be off by one step."""
    stated = parse_accuracy(of.error) if of.error else Accuracy(digits=Decimal(1))
    error = Accuracy() if isinstance(stated, Mistake) else stated
    step = of.resolution or Decimal(0)
    figures = (of.low, of.high, step, error.percent, error.digits, error.fixed)
    low, high, fine, percent, digits, fixed = map(_text, figures)
    return _symbol(of.unit), low, high, fine, percent, digits, fixed
