"""Columns as wide as they need: larger text, nothing moved, nothing out of the sheet."""

from flows import flows
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.chart.column_widths import UNEVEN, with_fitted_columns
from builder.chart.flow import Flow
from builder.chart.flow_metrics import flow_metrics
from builder.chart.spacing import COLUMN_GAP, EDGE, TEXT
from builder.chart.styles import STYLES, Style
from builder.chart.text_fit import Room, SheetLayout, fit_task, largest_layout, styled_flow

TOUCH = 0.01


@given(
    flow=flows(),
    style=st.sampled_from(STYLES),
    width=st.integers(250, 900),
    height=st.integers(300, 900),
    head=st.sampled_from((0, 150)),
)
@settings(max_examples=40)
def test_text_grows_and_stays_on_the_sheet(
    flow: Flow, style: Style, width: int, height: int, head: int
) -> None:
    """The same blocks in their order, no column above its height, all within the paper."""
    beside = (lambda _: 0.0) if head else None
    drawn = styled_flow(flow_metrics(flow), style)
    fit = largest_layout(fit_task(drawn, Room(width, height, height - head, beside)), 1)
    if fit is None:  # words beside the chart leave no room for it
        return
    fitted = with_fitted_columns(drawn, fit)
    scale = fitted.text / TEXT
    assert fitted.text >= fit.text
    assert blocks(fitted) == blocks(fit)
    gaps = (len(fitted.filled) - 1) * COLUMN_GAP + 2 * EDGE
    used = sum(fitted.widths[: len(fitted.filled)])
    assert (used + gaps) * scale <= width + TOUCH
    for column, wide, before in zip(fitted.filled, fitted.widths, fit.widths, strict=False):
        assert (column.height + 2 * EDGE) * scale <= height - head + TOUCH
        if column.pieces:
            assert before / UNEVEN - TOUCH <= wide <= before * UNEVEN + TOUCH
            assert wide >= drawn.least - TOUCH
        else:
            assert wide * scale >= before * fit.text / TEXT - TOUCH


def blocks(layout: SheetLayout) -> list[object]:
    """Return what stands in the columns, in reading order."""
    return [piece.blocks for column in layout.filled for piece in column.pieces]
