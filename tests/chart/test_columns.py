"""Blocks flowing down columns: in their order, no taller than they must be."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.chart.columns import (
    Column,
    MeasuredGroup,
    balanced_columns,
    block_groups,
    fill_columns,
    galley,
)
from builder.chart.flow import flow_of
from builder.chart.flow_metrics import flow_metrics
from builder.chart.layout import drawn_short
from builder.chart.spacing import SECTION_GAP
from builder.chart.styles import STYLES, Style
from builder.chart.text_block import steps_named
from builder.model.tree import Tree


@st.composite
def pieces(draw: st.DrawFn) -> list[MeasuredGroup]:
    """Draw the pieces of a few sections."""
    made = []
    for _ in range(draw(st.integers(1, 4))):
        count = draw(st.integers(1, 5))
        for at in range(count):
            body, tail, cut = (draw(st.integers(1, most)) for most in (40, 9, 9))
            last = at == count - 1
            made.append(MeasuredGroup((), (), at == 0, last, body, 0 if last else tail, cut))
    return made


def tallest(columns: list[Column] | None) -> float:
    """Return the height of the tallest column."""
    assert columns
    return max(column.height for column in columns)


def best_of_all_ways(items: list[MeasuredGroup], most: int) -> float:
    """Return the least height of the tallest of so many columns. Reference: every way to cut."""
    best = [sum(height_of(items[:end])) for end in range(1, len(items) + 1)]  # in one column
    for _ in range(most - 1):
        best = [
            min([best[end]] + [max(best[cut], sum(height_of(items[cut + 1 : end + 1])))
                               for cut in range(end)])
            for end in range(len(items))
        ]  # fmt: skip
    return best[-1]


def height_of(items: list[MeasuredGroup]) -> list[float]:
    """Return what the pieces of one column add to its height."""
    between = [SECTION_GAP if two.first else one.tail for one, two in pairwise(items)]
    foot = 0 if items[-1].last else items[-1].cut
    return [*(item.body for item in items), *between, foot]


@given(items=pieces(), high=st.integers(50, 300))
def test_columns_are_no_taller_than_they_must_be(items: list[MeasuredGroup], high: int) -> None:
    """The tallest is within a point of the best of all ways to cut; nothing changes its place."""
    filled = fill_columns(items, [high], len(items))
    if filled is None:  # one piece alone is too tall
        assert any(sum(height_of([item])) > high for item in items)
        return
    columns = balanced_columns(filled)
    assert [piece for column in columns for piece in column.pieces] == items
    assert len(columns) <= len(filled)
    assert 0 <= tallest(columns) - best_of_all_ways(items, len(filled)) <= 1
    assert [column.height for column in columns] == [
        sum(height_of(list(column.pieces))) for column in columns
    ]


def group(body: int, tail: int = 0, cut: int = 0) -> MeasuredGroup:
    """Make a piece of one section; without a tail its last."""
    return MeasuredGroup((), (), False, not tail, body, tail, cut)


def test_what_just_fits_is_not_cut() -> None:
    """To the last point, also with the connector at the foot; a point more takes a column more."""
    pieces = [group(30, 5, 3), group(15)]
    for height, most, columns in ((50, 1, 1), (49, 1, None), (49, 2, 2), (33, 2, 2), (32, 2, None)):
        filled = fill_columns(pieces, [height], most)
        assert (filled and len(filled)) == columns


@pytest.mark.parametrize("style", STYLES, ids=lambda style: style.name)
def test_only_what_holds_the_same_words_is_not_measured_again(small: Tree, style: Style) -> None:
    """Whichever box gets room for the number of a sheet, the column is as if measured afresh."""
    flow = drawn_short(flow_of(small))
    joined, before = block_groups(flow.sections), flow_metrics(flow, sheets=True)
    earlier = galley(before, style, joined)
    width = style.least(before) + 20
    earlier.at(width)
    jumps = {(name, to) for name, node in flow.nodes.items() for to in steps_named(node)}
    assert jumps
    for jump in jumps:
        metrics = flow_metrics(flow, sheets=True, elsewhere={jump})
        kept = galley(metrics, style, joined, earlier)
        assert kept.at(width) == galley(metrics, style, joined).at(width)
        same = [one is other for one, other in zip(kept.parts, earlier.parts, strict=True)]
        assert any(same)
        assert not all(same)
