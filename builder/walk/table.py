"""The checks of a tree that measure something, as one table.

In: a `Tree`, and the library for what its tools can tell. Out: a `Table`; `rows` says what stands
in it.
"""

from collections.abc import Iterator, Mapping
from decimal import Decimal

from builder.graph.space import domain_of, with_over_limit
from builder.model.figures import COMPARISONS, FigureKind
from builder.model.knowledge import InstrumentRange, Tool
from builder.model.library import Library
from builder.model.ranges import BOTTOM, Cut, Range
from builder.model.tree import Check, Reading, Result, Step, Tree
from builder.trade.instruments import Accuracy, parse_accuracy
from builder.trade.mistake import Mistake
from builder.trade.units import find_unit, same_kind
from builder.walk.computed import computed_rows, symbol
from builder.walk.rows import ReadingRow, Reads, ResultRow, Side, StepRow, Table, ToolRow

_FIGURES = {FigureKind.BAND: ["from", "to"], FigureKind.LIMIT: ["limit"]}  # what is asked for
_LOWEST: list[str | int] = ["-Infinity", 0]
_HIGHEST: list[str | int] = ["Infinity", 1]


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
    if not check.readings or any(find_unit(one.unit) is None for one in _measured(check)):
        return None
    axes = {one.name: domain_of(one) for one in check.readings}
    computed = list(computed_rows(check, axes))
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
    if not figure or find_unit(figure.unit) is None:
        return None
    sides = [_against(figure.kind, str(one.text)) for one in check.results]
    return {
        "figure": _FIGURES[figure.kind],
        "readings": [
            {"name": "", "unit": symbol(figure.unit), "low": "-Infinity", "high": "Infinity"}
        ],
        "computed": [],
        "results": [
            {"ranges": {"": side} if side else {}, "to": str(one.branch.text)}
            for side, one in zip(sides, check.results, strict=True)
        ],
        "tools": tools,
    }


def _against(kind: FigureKind, comparison: str) -> Side | None:
    """Write how a result compares with a figure: 0 lies below it, 1 within or at it, 2 above."""
    places = COMPARISONS[kind].get(comparison)
    if places is None:
        return None
    first, last = _FIGURES[kind][0], _FIGURES[kind][-1]
    lows: Side = [_LOWEST, [first, 0], [last, 1]]
    highs: Side = [[first, 0], [last, 1], _HIGHEST]
    return [lows[int(places.low.value)], highs[int(places.high.value)]]


def _reading(reading: Reading) -> ReadingRow:
    row: ReadingRow = {
        "name": reading.name,
        "unit": "" if reading.one_of else symbol(reading.unit),
        "low": _text(reading.low),
        "high": _text(reading.high),
    }
    if reading.one_of:
        row["phrases"] = [str(phrase) for phrase in reading.one_of]
    return row


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


def _side(check: Check, name: str, written: Range, domain: Range) -> Side:
    """Write a range; where it reaches an end of all that can be read, it is left open there."""
    covered = with_over_limit(check, name, written)
    low = _LOWEST if covered.low <= max(domain.low, BOTTOM) else _cut(covered.low)
    return [low, _HIGHEST if covered.high >= domain.high else _cut(covered.high)]


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
    return symbol(of.unit), low, high, fine, percent, digits, fixed
