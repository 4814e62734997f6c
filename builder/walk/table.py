"""The checks of a tree that measure something, as one table.

In: a `Tree`, and the library for the accuracy of its tools. Out: a `WalkTable`, described in
`rows`.
"""

from collections.abc import Iterator, Mapping
from decimal import Decimal

from builder.graph.space import domain_of, with_over_limit
from builder.model.checks import Check, Reading, Result
from builder.model.figures import COMPARISONS, FigureKind
from builder.model.knowledge import InstrumentRange, Tool
from builder.model.library import Library
from builder.model.ranges import BOTTOM, Cut, Range
from builder.model.tree import Step, Tree
from builder.trade.instruments import Accuracy, parse_accuracy
from builder.trade.mistake import Mistake
from builder.trade.units import find_unit, same_kind
from builder.walk.computed_readings import computed_rows, unit_symbol
from builder.walk.rows import (
    CutPair,
    InstrumentRow,
    ReadingRow,
    ResultRow,
    StepRow,
    ToolRow,
    WalkTable,
)

_SPECS = {FigureKind.BAND: ["from", "to"], FigureKind.LIMIT: ["limit"]}  # the specs to look up
_LOWEST: list[str | int] = ["-Infinity", 0]
_HIGHEST: list[str | int] = ["Infinity", 1]


def walk_table(tree: Tree, library: Library) -> WalkTable:
    """Return every check of a tree that has readings or is compared with a spec."""
    steps: dict[str, StepRow] = {}
    kinds: set[str] = set()
    for step in tree.steps.values():
        row = measuring_row(step, tools_of(tree, step))
        if row:
            steps[str(step.id)] = row
            kinds.update(reading["unit"] for reading in row["readings"] if reading["unit"])
    named = dict.fromkeys(id_ for row in steps.values() for id_ in row["tools"])
    tools = {id_: tool_row(library.tools[id_], kinds) for id_ in named if id_ in library.tools}
    return {"steps": steps, "tools": {id_: row for id_, row in tools.items() if row["reads"]}}


def tools_of(tree: Tree, step: Step) -> list[str]:
    """Return the tools of a step, or those of the step whose method it takes."""
    method = tree.steps.get(step.same_as) if step.same_as else None
    return [str(id_) for id_ in step.tools or (method.tools if method else ())]


def measuring_row(step: Step, tools: list[str]) -> StepRow | None:
    """Return the readings of a check and the ranges of its results; None where it has none."""
    check = step.body
    if not isinstance(check, Check):
        return None
    if check.figure:
        return _spec_row(check, tools)
    if not check.readings or any(find_unit(m.unit) is None for m in _measured(check)):
        return None
    domains = {reading.name: domain_of(reading) for reading in check.readings}
    computed = list(computed_rows(check, domains))
    if len(computed) < len(check.computed):
        return None  # a formula that can't be calculated is a finding; the page shows no form
    return {
        "readings": [_reading_row(reading) for reading in check.readings],
        "computed": computed,
        "results": [_result_row(check, result, domains) for result in check.results],
        "tools": tools,
    }


def _measured(check: Check) -> Iterator[Reading]:
    return (reading for reading in check.readings if not reading.one_of)


def _spec_row(check: Check, tools: list[str]) -> StepRow | None:
    figure = check.figure
    if not figure or find_unit(figure.unit) is None:
        return None
    ranges = [_spec_cuts(figure.kind, str(result.text)) for result in check.results]
    return {
        "figure": _SPECS[figure.kind],
        "readings": [
            {"name": "", "unit": unit_symbol(figure.unit), "low": "-Infinity", "high": "Infinity"}
        ],
        "computed": [],
        "results": [
            {"ranges": {"": cuts} if cuts else {}, "to": str(result.branch.text)}
            for cuts, result in zip(ranges, check.results, strict=True)
        ],
        "tools": tools,
    }


def _spec_cuts(kind: FigureKind, comparison: str) -> CutPair | None:
    """Return the cuts of a result against a spec: place 0 is below it, 1 at or within, 2 above."""
    places = COMPARISONS[kind].get(comparison)
    if places is None:
        return None
    first, last = _SPECS[kind][0], _SPECS[kind][-1]
    lows: CutPair = [_LOWEST, [first, 0], [last, 1]]
    highs: CutPair = [[first, 0], [last, 1], _HIGHEST]
    return [lows[int(places.low.value)], highs[int(places.high.value)]]


def _reading_row(reading: Reading) -> ReadingRow:
    row: ReadingRow = {
        "name": reading.name,
        "unit": "" if reading.one_of else unit_symbol(reading.unit),
        "low": _text(reading.low),
        "high": _text(reading.high),
    }
    if reading.one_of:
        row["phrases"] = [str(phrase) for phrase in reading.one_of]
    return row


def _result_row(check: Check, result: Result, domains: Mapping[str, Range]) -> ResultRow:
    ranges = {
        name: _cuts(check, name, written, domains[name])
        for name, written in result.ranges.items()
        if name in domains
    }
    row: ResultRow = {
        "ranges": {name: cuts for name, cuts in ranges.items() if cuts != [_LOWEST, _HIGHEST]},
        "to": str(result.branch.text),
    }
    if result.otherwise:
        row["otherwise"] = True
    return row


def _cuts(check: Check, name: str, written: Range, domain: Range) -> CutPair:
    """Return the cuts of a range, without a limit at an end of the domain that it reaches."""
    covered = with_over_limit(check, name, written)
    low = _LOWEST if covered.low <= max(domain.low, BOTTOM) else _cut(covered.low)
    return [low, _HIGHEST if covered.high >= domain.high else _cut(covered.high)]


def _cut(cut: Cut) -> list[str | int]:
    return [_text(cut.value), int(cut.after)]


def _text(value: Decimal) -> str:
    return f"{value:f}"


def tool_row(tool: Tool, kinds: set[str] | None = None) -> ToolRow:
    """Return a tool with its ranges for some units, or with all."""
    ranges = [
        r for r in tool.reads if kinds is None or any(same_kind(r.unit, kind) for kind in kinds)
    ]
    return {"name": str(tool.name), "reads": [_instrument_row(r) for r in ranges]}


def _instrument_row(instrument: InstrumentRange) -> InstrumentRow:
    """Return a range of a tool; without a stated error, it may be off by its resolution."""
    stated = parse_accuracy(instrument.error) if instrument.error else Accuracy(digits=Decimal(1))
    error = Accuracy() if isinstance(stated, Mistake) else stated
    resolution = instrument.resolution or Decimal(0)
    error_figures = (error.percent, error.digits, error.fixed)
    figures = (instrument.low, instrument.high, resolution, *error_figures)
    low, high, fine, percent, digits, fixed = map(_text, figures)
    return unit_symbol(instrument.unit), low, high, fine, percent, digits, fixed
