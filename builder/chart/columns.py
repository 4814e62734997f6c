"""Sections flowing down columns, as a newspaper does; no symbol is ever cut.

In: blocks, a style and the width and height of the columns. Out: which blocks stand in which
column. All measures at the nominal text size.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial
from typing import NamedTuple

from builder.chart.block_size import BlockSize
from builder.chart.flow_metrics import FlowMetrics
from builder.chart.spacing import SECTION_GAP
from builder.chart.step_function import StepFunction
from builder.chart.styles import Style
from builder.plan.outline import OutlineBlock, OutlineSection


class MeasuredGroup(NamedTuple):
    """Blocks of one section that stay together."""

    blocks: tuple[OutlineBlock, ...]
    sizes: tuple[BlockSize, ...]
    first: bool  # of its section
    last: bool
    body: float
    tail: float  # to the next piece of the section
    cut: float  # the connector instead, at the foot of a column


class Column(NamedTuple):
    """The pieces that stand in one column, from the top."""

    pieces: tuple[MeasuredGroup, ...]
    height: float


Group = tuple[tuple[OutlineBlock, ...], bool, bool]  # blocks, whether first and last of the section
Groups = tuple[Group, ...]


def block_groups(sections: Sequence[OutlineSection], separate: bool = False) -> Groups:
    """Join the blocks that must not be split.

    A head without results stays with what follows, and an end with nothing but connectors stays
    with the check that led to it: no lone head at the foot of a column, no lone fix at the top.
    With `separate`, for text so large that a sheet holds little more than a box, none are joined.
    """
    found = []
    for section in sections:
        joined: list[list[OutlineBlock]] = []
        for block in section.blocks:
            lone_end = block.down is None and not any(side.chain for side in block.sides)
            lone_head = len(joined) == 1 and not any(before.sides for before in joined[0])
            if joined and (lone_end or lone_head) and not separate:
                joined[-1].append(block)
            else:
                joined.append([block])
        last = len(joined) - 1
        found += [(tuple(blocks), at == 0, at == last) for at, blocks in enumerate(joined)]
    return tuple(found)


@dataclass(frozen=True, slots=True)
class Galley:
    """A flow in one style as one column, as printers call type before it is cut into pages."""

    metrics: FlowMetrics
    parts: tuple[StepFunction[MeasuredGroup], ...]
    at: StepFunction[tuple[MeasuredGroup, ...]]  # everything, in a column of any width


def galley(
    metrics: FlowMetrics, style: Style, joined: Groups, earlier: Galley | None = None
) -> Galley:
    """Prepare what stays together to be measured.

    Of an earlier galley of the same flow everything is kept that holds the same words.
    """
    parts = tuple(
        earlier.parts[at]
        if earlier and _same_words(group, metrics, earlier.metrics)
        else StepFunction(partial(_measured_group, metrics, style, group))
        for at, group in enumerate(joined)
    )
    return Galley(
        metrics, parts, StepFunction(lambda width: tuple([part(width) for part in parts]))
    )


def _same_words(group: Group, metrics: FlowMetrics, earlier: FlowMetrics) -> bool:
    """Whether the boxes of a group hold the same words; labels and connectors always do."""
    steps = [link.step for block in group[0] for side in block.sides for link in side.chain]
    steps += [block.step for block in group[0]]
    return all(metrics.boxes[step] is earlier.boxes[step] for step in steps)


def _measured_group(
    metrics: FlowMetrics, style: Style, group: Group, column: float
) -> MeasuredGroup:
    blocks, first, last = group
    sizes = tuple([style.size(metrics, block, column) for block in blocks])
    body = sum([one.body for one in sizes]) + sum([one.tail for one in sizes[:-1]])
    return MeasuredGroup(blocks, sizes, first, last, body, sizes[-1].tail, sizes[-1].cut)


def galley_height(items: Sequence[MeasuredGroup]) -> float:
    """Height of everything in one column."""
    gaps = sum([SECTION_GAP for piece in items if piece.first]) - SECTION_GAP
    return gaps + sum([piece.body + piece.tail for piece in items])


def column_height(pieces: Sequence[MeasuredGroup]) -> float:
    """Height of the pieces of one column, with the connector at its foot."""
    foot = 0 if pieces[-1].last else pieces[-1].cut - pieces[-1].tail
    return galley_height(pieces) + foot + (0 if pieces[0].first else SECTION_GAP)


def fill_columns(
    items: Sequence[MeasuredGroup], heights: Sequence[float], most: int
) -> list[Column] | None:
    """Fill columns in order; None if more than `most` are needed or a piece is too tall.

    The last of the heights is that of all further columns. One of the first columns that is too
    short for what comes next, because a heading takes its room, stays empty.
    """
    rest = len(heights) - 1
    columns: list[Column] = []
    start = 0
    while start < len(items):
        if len(columns) == most:
            return None
        room = heights[min(len(columns), rest)]
        taken, high = _take(items, start, room)
        if not taken and room >= heights[rest]:
            return None
        columns.append(Column(tuple(items[start : start + taken]), high))
        start += taken
    return columns


def _take(items: Sequence[MeasuredGroup], start: int, room: float) -> tuple[int, float]:
    """Return how many pieces fit, and the height they take with the connector at the foot."""
    used = 0.0
    taken, height = 0, 0.0
    for number in range(start, len(items)):
        piece = items[number]
        if number > start:
            used += SECTION_GAP if piece.first else items[number - 1].tail
        used += piece.body
        if used > room:
            break
        foot = used if piece.last else used + piece.cut
        if foot <= room:
            taken, height = number - start + 1, foot
    return taken, height


def balanced_columns(columns: Sequence[Column]) -> list[Column]:
    """Fill the same columns again, no taller than they must be; empty ones stay in front."""
    empty = [column for column in columns if not column.pieces]
    best = [column for column in columns if column.pieces]
    items = [piece for column in best for piece in column.pieces]
    low, high = 0.0, max((column.height for column in best), default=0)
    while high - low > 1:
        middle = (low + high) / 2
        found = fill_columns(items, [middle], len(best))
        if not found:
            low = middle
        else:
            best, high = found, max(column.height for column in found)
    return empty + best
