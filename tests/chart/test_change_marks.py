"""What a review marks is seen without color: a word in heavy type on its ground, a bar beside."""

import re

import pytest

from builder.chart.change_marks import NEW, ChangeMark, with_changes
from builder.chart.chart import Chart, Polyline, Run
from builder.chart.flow import flow_of
from builder.chart.layout import one_column
from builder.chart.svg import svg
from builder.chart.text_block import CHANGE
from builder.model.tree import Tree

MARKS = {"rest": ChangeMark("CHANGED: minutes", ("was 12 V", "", "")), "well": ChangeMark(NEW)}


def chart_and_marks(small: Tree) -> tuple[Chart, list[Run]]:
    """Draw a review, and return what it says in the order of the drawing."""
    chart = one_column(with_changes(flow_of(small), MARKS))
    parts = (part for part in chart.parts if not isinstance(part, Polyline))
    return chart, [run for part in parts for run in part.runs if run.tone == CHANGE]


def test_a_review_marks_only_what_changed(small: Tree) -> None:
    """Its words are heavy; a changed box has one bar beside it, a new one two."""
    chart, marks = chart_and_marks(small)
    assert " ".join(run.text for run in marks) == "CHANGED: minutes was 12 V NEW"
    assert all(run.bold for run in marks)
    assert {box.id: box.change for box in chart.boxes if box.change} == {
        "rest": "changed",
        "well": "new",
    }
    assert svg(chart).count('class="bar"') == 3


def test_the_words_of_a_review_stand_in_the_middle_of_their_ground(small: Tree) -> None:
    """It stands out by as much at their left as at their right."""
    chart, marks = chart_and_marks(small)
    grounds = re.findall(r'class="tag" x="([\d.]+)" y="[\d.]+" width="([\d.]+)"', svg(chart))
    for (x, width), run in zip(grounds, marks, strict=True):
        assert float(x) + float(width) / 2 == pytest.approx(run.x + run.width / 2, abs=0.1)
