"""What stands in the walk table: plain lists and maps that JSON can carry.

In: filled by `table`. Out: read by `follow` and by the page's script.

All numbers are exact decimals as text; `Infinity` is over the instrument's range.
A range is two cuts `[value, after]`: just before a value (0) or just after it (1). Where a range
goes on to the end of all that can be read, its cut lies at `-Infinity` or `Infinity`, and a reading
that a result takes whole is left out. In a check against the maker's figure the value of a cut is
the name of what was looked up: `from` and `to` of a band, or `limit`.
"""

from typing import NotRequired, TypedDict

from builder.trade.expressions import Compiled

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
