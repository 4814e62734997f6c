"""The rows of the walk table: plain lists and maps that JSON can carry.

In: filled in by `table`. Out: read by `follow` and by the page's script.

All numbers are exact decimals as text; `Infinity` is over the instrument's range.
A range is two cuts `[value, after]`: just before a value (0) or just after it (1). If a range has
no lower or upper limit, its cut is at `-Infinity` or `Infinity`. If a result takes every value of a
reading, the reading is left out. In a check against the vehicle maker's spec, the value of a cut is
the name of the spec that was looked up: `from` and `to` of a range, or `limit`.
"""

from typing import NotRequired, TypedDict

from builder.trade.expressions import Compiled

CutPair = list[list[str | int]]  # the two cuts of a range
# Unit, low, high, resolution; then the error: percent, last digits, fixed.
InstrumentRow = tuple[str, str, str, str, str, str, str]


class ReadingRow(TypedDict):
    """A value to type in; `phrases` are the choices if it isn't a number."""

    name: str
    unit: str
    low: str
    high: str
    phrases: NotRequired[list[str]]


class ComputedRow(TypedDict):
    """A value calculated from the readings, and from computed ones above it."""

    name: str
    unit: str
    form: Compiled


class ResultRow(TypedDict):
    """The range of each reading that a result names, and where the result leads."""

    ranges: dict[str, CutPair]
    to: str
    otherwise: NotRequired[bool]  # covers what the results above it leave


class StepRow(TypedDict):
    """One check; `figure` names the spec to look up first, in the unit of the reading."""

    readings: list[ReadingRow]
    computed: list[ComputedRow]
    results: list[ResultRow]
    tools: list[str]
    figure: NotRequired[list[str]]


class ToolRow(TypedDict):
    """A tool, and its ranges for the units of this tree."""

    name: str
    reads: list[InstrumentRow]


class WalkTable(TypedDict):
    """The steps by id, and the tools that they name."""

    steps: dict[str, StepRow]
    tools: dict[str, ToolRow]
