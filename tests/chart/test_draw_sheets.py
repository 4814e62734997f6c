"""Sheets: a jump has room for the number of the sheet that its words then name."""

import re

from builder.chart.draw_sheets import jumps_to_other_sheets, sheet_drawings
from builder.chart.flow import flow_of
from builder.chart.flow_metrics import flow_metrics
from builder.chart.layout import MANY, drawn_short
from builder.chart.styles import UNDER
from builder.chart.text_fit import Room, fewest_sheets_layout, fit_task, styled_flow
from builder.model.tree import Tree
from builder.wording.results import NO_BREAK

JUMP = re.compile(r"\b(?:to|or) (\d+) sheet \d")


def test_the_jumps_that_need_room_for_a_sheet_are_those_that_name_one(small: Tree) -> None:
    """Measured for others, the words "sheet 2" would run out of their box."""
    metrics = flow_metrics(drawn_short(flow_of(small)), sheets=True)
    task = fit_task(styled_flow(metrics, UNDER), Room(250, 500, 500))
    layout = fewest_sheets_layout(task, 12, MANY)
    assert layout
    boxes = [box for chart in sheet_drawings(metrics, layout) for box in chart.boxes]
    words = [(box.id, " ".join(run.text for run in box.runs)) for box in boxes]
    named = {(id_, to) for id_, said in words for to in JUMP.findall(said.replace(NO_BREAK, " "))}
    assert named == set(jumps_to_other_sheets(metrics.flow, layout))
    assert named
