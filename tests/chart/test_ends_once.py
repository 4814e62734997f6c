"""Where a sheet is crowded, an end that several results lead to is drawn in full once."""

from itertools import pairwise

from builder.chart.ends_once import CROWDED, ends_once
from builder.chart.flow import Edge, Flow, Node
from builder.chart.layout import drawn_short, one_sheet
from builder.chart.text_fit import Room
from builder.plan.outline import OutlineEdge, StepGraph, outline

from .faults import NONE, faults


def flow_of_checks(count: int) -> Flow:
    """Make a row of checks, of each of which one result leads to the same fix."""
    checks = [str(number) for number in range(1, count + 1)]
    edges: dict[str, tuple[Edge, ...]] = {"fix": (), "done": ()}
    for one, after in pairwise([*checks, "done"]):
        edges[one] = (Edge(one, "fix", "bad"), Edge(one, after, "good"))
    leads = {name: [OutlineEdge(edge.target) for edge in out] for name, out in edges.items()}
    nodes = {name: Node(name, "check", "Look at it", name) for name in checks}
    nodes |= {"fix": Node("fix", "fix", "Replace it", "98"),
              "done": Node("done", "stop", "It is good", "99")}  # fmt: skip
    ends = frozenset({"fix", "done"})
    return Flow("row", nodes, edges, outline(StepGraph("1", leads, ends, frozenset(checks))))


def drawn(flow: Flow) -> list[str]:
    """Return the ends that are drawn in full, one after another."""
    blocks = [block for section in flow.sections for block in section.blocks]
    return [link.step for block in blocks for side in block.sides for link in side.chain]


def test_a_crowded_chart_has_each_end_once() -> None:
    """The other results lead to it by its number, which then has its dark ground."""
    flow = drawn_short(flow_of_checks(CROWDED))
    short = ends_once(flow)
    assert drawn(flow).count("fix") == CROWDED
    assert drawn(short) == ["fix", "done"]
    assert (short.nodes["fix"].led_to, short.nodes["done"].led_to) == (True, False)
    chart = one_sheet(flow_of_checks(CROWDED), Room(1152, 720, 720))
    (fix,) = (box for box in chart.boxes if box.id == "fix" and box.kind == "fix")
    assert fix.arrival
    assert sum(box.id == "fix" and box.kind == "connector" for box in chart.boxes) == CROWDED - 1
    assert faults(chart) == NONE


def test_a_chart_with_room_repeats_its_ends() -> None:
    """Nobody has to look across a sheet that is read from afar anyway."""
    flow = drawn_short(flow_of_checks(2))
    assert drawn(flow).count("fix") == 2
    assert ends_once(flow) == flow


def test_a_chart_of_mostly_the_same_end_has_it_once() -> None:
    """Five boxes of the same words on a sheet make all its text small."""
    assert drawn(ends_once(drawn_short(flow_of_checks(5)))) == ["fix", "done"]
