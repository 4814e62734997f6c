"""The first sheet, from which a heading takes room."""

import pytest
from flows import in_a_row

from builder.chart.layout import sheet_charts
from builder.chart.text_fit import Room


@pytest.mark.parametrize(("left", "begins"), [(140, True), (20, False)])
def test_a_chart_begins_on_the_first_sheet_if_a_box_fits_there(left: int, begins: bool) -> None:
    """Even where the text would be larger with the whole chart on the second."""
    charts = sheet_charts(in_a_row(2, 2), [Room(523, 700, left)], 18).charts
    assert [bool(chart.boxes) for chart in charts] == [begins, True]
    assert charts[0].text_size >= 18
