"""The words of a box stay inside it, its bar too."""

import pytest

from builder.chart.chart import Rect
from builder.chart.flow import Flow, Node
from builder.chart.flow_metrics import flow_metrics
from builder.chart.parts import Pen, box_part
from builder.model.knowledge import Signal
from builder.plan.outline import OutlineBlock, OutlineSection

NAMES = ("battery gas", "rotating parts", "supply while programming", "hot coolant")


@pytest.mark.parametrize("kind", ["check", "fix", "handoff"])
def test_a_bar_stays_in_its_box(kind: str) -> None:
    """At every width, from one that holds a word to one that holds all names."""
    node = Node("a", kind, "Look", "1", caution=Signal.WARNING, hazards=NAMES)
    flow = Flow("drawn", {"a": node}, {"a": ()}, (OutlineSection((OutlineBlock("a", (), None),)),))
    metrics = flow_metrics(flow)
    narrowest = int(metrics.boxes["a"].widest + 2 * metrics.pads["a"]) + 1
    for width in range(narrowest, narrowest + 300):
        box = box_part(Pen(metrics), "a", Rect(0, 0, width, metrics.box_height("a", width)))
        assert box.signal == "WARNING"
        assert max(run.x + run.width for run in box.runs) <= width - metrics.pads["a"] + 1e-9
        assert max(run.y for run in box.runs) < box.rect.bottom
