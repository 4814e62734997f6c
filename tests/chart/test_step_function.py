"""A measure that falls by steps: the same as measured at every width, and measured seldom."""

from math import isclose

from hypothesis import given
from hypothesis import strategies as st

from builder.chart.fonts import LEADING
from builder.chart.measured_word import measured_words
from builder.chart.spacing import SMALL
from builder.chart.step_function import StepFunction
from builder.chart.text_block import broken_lines, text_block

WIDTHS = st.lists(st.floats(60, 500), min_size=1, max_size=60)
SAID = st.lists(st.sampled_from(["a", "voltage", "12.2", "battery"]), min_size=1, max_size=20)


@given(SAID.map(" ".join), WIDTHS)
def test_a_height_is_the_same_as_measured_there(text: str, widths: list[float]) -> None:
    """In whatever order widths are tried, each gives the height of the lines set at it."""
    block = text_block([measured_words(text, SMALL)])
    for width in widths:
        assert isclose(block.height(width), len(broken_lines(block, width)) * LEADING * SMALL)


@given(WIDTHS)
def test_what_lies_between_equals_is_not_measured(widths: list[float]) -> None:
    """Between two widths of the same height nothing needs to be measured."""
    measured: list[float] = []

    def height(width: float) -> list[float]:
        measured.append(width)
        return [12.0]

    steps = StepFunction(height)
    for end in (60, 500):
        steps(end)
    assert all(steps(width) == [12.0] for width in widths)
    assert measured == [60, 500]
