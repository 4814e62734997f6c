"""The search for the largest text, held against every number of columns tried out."""

from dataclasses import replace

import pytest
from flows import flows, in_a_row
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.chart import text_fit
from builder.chart.flow import Flow, flow_of
from builder.chart.flow_metrics import flow_metrics
from builder.chart.spacing import COLUMN_GAP, EDGE, TEXT
from builder.chart.styles import STYLES, UNDER, Style
from builder.chart.text_fit import (
    LARGEST,
    WIDEST,
    FitTask,
    Room,
    column_width,
    fit_task,
    height_at,
    largest_layout,
    layout_at_size,
    styled_flow,
)
from builder.model.tree import Tree

NEAR = 1.25  # limits are estimates: of 400 flows one was laid out an eighth smaller than it could


def task_of(flow: Flow, style: Style, room: Room) -> FitTask:
    """Put a flow before a way to use the paper."""
    return fit_task(styled_flow(flow_metrics(flow), style), room)


EMPTY_TASK = task_of(in_a_row(1), UNDER, Room(1, 1, 1))


@given(
    flow=flows(),
    style=st.sampled_from(STYLES),
    width=st.integers(250, 900),
    height=st.integers(300, 900),
    sheets=st.integers(1, 2),
)
@settings(max_examples=60)
def test_no_number_of_columns_holds_larger_text(
    flow: Flow, style: Style, width: int, height: int, sheets: int
) -> None:
    """What is chosen is the largest, whether one wide column or many narrow ones give it."""
    task = task_of(flow, style, Room(width, height, height))
    best = largest_layout(task, sheets)
    assert best
    for columns in range(1, 12) if best.text * NEAR < LARGEST else ():
        assert layout_at_size(task, best.text * NEAR, columns, sheets) is None


@given(widths=st.lists(st.integers(50, 400), min_size=2, max_size=4, unique=True).map(sorted),
       width=st.integers(40, 450), top=st.integers(0, 90))  # fmt: skip
def test_a_height_between_two_goes_with_the_inverse_of_the_width(
    widths: list[int], width: int, top: int
) -> None:
    """The same words in half the width take twice the lines, below what stays as high as it is."""
    found = height_at([(at, top + 9000 / at) for at in widths], width)
    assert found == pytest.approx(top + 9000 / min(width, widths[-1]))


@given(columns=st.integers(1, 6), text=st.floats(8, 30), width=st.integers(300, 900))
def test_columns_fill_the_width_of_a_sheet(columns: int, text: float, width: int) -> None:
    """With the gaps between them and the edges; none is wider than lines may be."""
    task = replace(EMPTY_TASK, room=Room(width, 700, 700))
    column = column_width(task, text, columns)
    whole = (2 * EDGE + columns * (column + COLUMN_GAP) - COLUMN_GAP) * text / TEXT
    assert whole == pytest.approx(width) or (column == WIDEST and whole < width)


@pytest.mark.parametrize("style", STYLES, ids=lambda style: style.name)
def test_a_chart_may_have_to_begin_on_the_first_sheet(small: Tree, style: Style) -> None:
    """Where a heading takes the first sheet, a chart may leave it empty unless it is told to."""
    task = task_of(flow_of(small), style, Room(523, 700, 30))
    left_empty = layout_at_size(task, 12, 1, 20)
    assert left_empty
    assert not left_empty.begins
    assert layout_at_size(replace(task, begins=True), 12, 1, 20) is None
    whole = task_of(flow_of(small), style, Room(523, 700, 700))
    begun = layout_at_size(replace(whole, begins=True), 12, 1, 20)
    assert begun
    assert begun.begins


def test_words_beside_the_chart_take_the_columns_they_need(small: Tree) -> None:
    """One would be too narrow for them; the chart begins in the next."""
    asked: list[float] = []

    def beside(width: float) -> float:
        asked.append(width)
        return 451 - (width > 200)

    room = Room(770, 450, 450, beside=beside)
    found = layout_at_size(task_of(flow_of(small), UNDER, room), 12, 4, 20)
    assert found
    assert [bool(column.pieces) for column in found.filled] == [False, False, True, True]
    one, gap = found.widths[0] * 12 / TEXT, COLUMN_GAP * 12 / TEXT
    assert asked == [int(one), int(2 * one + gap)]


def test_only_the_first_sheet_gives_room_to_words_beside_the_chart(
    small: Tree, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Its columns come first, those that are taken without any height; all others are as high."""
    asked: list[list[float]] = []
    monkeypatch.setattr(text_fit, "fill_columns", lambda _, heights, most: asked.append(heights))
    room = Room(770, 700, 450, beside=lambda width: 451 - (width > 200))
    assert layout_at_size(task_of(flow_of(small), UNDER, room), TEXT, 4, 20) is None
    assert asked == [[0, 0, 450 - 2 * EDGE, 450 - 2 * EDGE, 700 - 2 * EDGE]]
