"""Sections flowing down columns, as a newspaper does; no symbol is ever cut.

In: measured blocks and the heights of the columns. Out: which blocks stand in which column.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from builder.chart.stock import Stock
from builder.plan.outline import Block

SECTION_GAP = 13.0


class Measured(NamedTuple):
    """What the flow needs to know of a block at one width."""

    body: float
    tail: float
    cut: float


class Piece(NamedTuple):
    """Blocks of one section that stay together."""

    blocks: tuple[Block, ...]
    first: bool  # of its section
    last: bool
    body: float
    tail: float  # to the next piece of the section
    cut: float  # the connector instead, at the foot of a column


@dataclass(frozen=True, slots=True)
class Column:
    """The pieces that stand in one column, from the top."""

    pieces: tuple[Piece, ...]
    height: float


def pieces(stock: Stock, measure: Callable[[Block], Measured]) -> list[Piece]:
    """Join the blocks that must not be parted.

    A head without results stays with what follows, and an end without results stays with the
    check that led to it: no lone head at the foot of a column, no lone fix at the top.
    """
    found: list[Piece] = []
    for section in stock.flow.sections:
        groups: list[list[Block]] = []
        for number, block in enumerate(section.blocks):
            lone_end = block.down is None and not block.sides
            after_lone_head = (
                number > 0 and all(not b.sides for b in groups[-1]) and (len(groups) == 1)
            )
            if groups and (lone_end or after_lone_head):
                groups[-1].append(block)
            else:
                groups.append([block])
        found += _section_pieces(groups, measure)
    return found


def _section_pieces(groups: list[list[Block]], measure: Callable[[Block], Measured]) -> list[Piece]:
    made = []
    for number, group in enumerate(groups):
        sizes = [measure(block) for block in group]
        body = sum(size.body for size in sizes) + sum(size.tail for size in sizes[:-1])
        last = number == len(groups) - 1
        made.append(Piece(tuple(group), number == 0, last, body, sizes[-1].tail, sizes[-1].cut))
    return made


def flow(items: Sequence[Piece], heights: Callable[[int], float], most: int) -> list[Column] | None:
    """Fill columns in order; None if more than `most` are needed or a piece is too tall."""
    columns: list[Column] = []
    start = 0
    while start < len(items):
        if len(columns) == most:
            return None
        taken, height = _fill(items, start, heights(len(columns)))
        if not taken:
            return None
        columns.append(Column(tuple(items[start : start + taken]), height))
        start += taken
    return columns


def _fill(items: Sequence[Piece], start: int, room: float) -> tuple[int, float]:
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


def balanced(items: Sequence[Piece], columns: int, room: float) -> list[Column] | None:
    """Fill at most `columns` columns, no taller than they must be."""
    best = flow(items, lambda _: room, columns)
    if best is None:
        return None
    low, high = 0.0, max(column.height for column in best)
    while high - low > 1:
        middle = (low + high) / 2
        found = flow(items, lambda _, tall=middle: tall, columns)  # type: ignore[misc]
        if found is None:
            low = middle
        else:
            best, high = found, max(column.height for column in found)
    return best
