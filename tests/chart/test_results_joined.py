"""Results of one check that lead to the same step are drawn as one."""

from dataclasses import replace

import pytest

from builder.chart.flow import Edge, Flow, Node
from builder.chart.layout import drawn_short
from builder.chart.results_joined import JOINED
from builder.plan.outline import OutlineEdge, StepGraph, outline


def flow_with(*ways: tuple[str, str], in_order: bool = False) -> Flow:
    """Make a check with results that lead to a fix `f`, a stop `s` or on to a check `c`."""
    kinds = {"a": "check", "c": "check", "f": "fix", "s": "stop"}
    edges = dict.fromkeys(kinds, ()) | {
        "a": tuple(Edge("a", to, label) for label, to in ways),
        "c": (Edge("c", "f", "good"),),
    }
    leads = {name: [OutlineEdge(edge.target) for edge in out] for name, out in edges.items()}
    graph = StepGraph("a", leads, frozenset("fs"), frozenset("ac"))
    nodes = {name: Node(name, kind, "Look", name, in_order=in_order)
             for name, kind in kinds.items()}  # fmt: skip
    return Flow("drawn", nodes, edges, outline(graph))


def said(flow: Flow) -> list[str]:
    """Return the words of the first check's results as they are drawn."""
    short = drawn_short(flow)
    block = short.sections[0].blocks[0]
    down = [] if block.down is None else [block.down]
    return [
        short.edges["a"][at].label for at in (*(side.edge_index for side in block.sides), *down)
    ]


def test_the_same_fix_is_drawn_once() -> None:
    """Bad power and bad ground of one wire: one box says both."""
    flow = flow_with(("no feed", "f"), ("dim", "s"), ("no ground", "f"), ("good", "c"))
    assert said(flow) == ["no feed or no ground", "dim", "good"]


def test_what_leads_on_to_the_next_step_goes_straight_down() -> None:
    """No connector to the box right below."""
    assert said(flow_with(("no", "f"), ("yes", "c"), ("can't test", "c"))) == [
        "no",
        "yes or can't test",
    ]


def test_where_the_first_that_fits_counts_only_neighbors_are_joined() -> None:
    """To join the first and the third would put the third before the second."""
    flow = flow_with(("a", "f"), ("b", "s"), ("c", "f"), ("d", "c"), in_order=True)
    assert said(flow) == ["a", "b", "c", "d"]
    flow = flow_with(("a", "s"), ("b", "f"), ("c", "f"), ("d", "c"), in_order=True)
    assert said(flow) == ["a", "b or c", "d"]


@pytest.mark.parametrize("more", [{"means": "open"}, {"change": "NEW"}])
@pytest.mark.parametrize("place", [0, 1])
def test_a_result_that_says_more_is_drawn_by_itself(more: dict[str, str], place: int) -> None:
    """What one of two results means, or a review says of it, isn't true of the other."""
    flow = flow_with(("no feed", "f"), ("no ground", "f"), ("good", "c"))
    edges = list(flow.edges["a"])
    edges[place] = replace(edges[place], **more)  # type: ignore[arg-type]
    told = replace(flow, edges=flow.edges | {"a": tuple(edges)})
    assert said(told) == ["no feed", "no ground", "good"]


@pytest.mark.parametrize("ways", [("", "no ground"), ("no feed", "")])
def test_a_way_without_words_is_joined_to_none(ways: tuple[str, str]) -> None:
    """There is nothing to say `or` between."""
    assert said(flow_with(*((label, "f") for label in ways), ("good", "c"))) == [*ways, "good"]


def test_long_rows_of_results_are_kept_apart() -> None:
    """A row that runs over many lines is harder to read than two boxes."""
    half = "a" * (JOINED // 2)
    flow = flow_with((half, "f"), (half, "f"), ("good", "c"))
    assert said(flow) == [f"{half} or {half}", "good"]
    flow = flow_with((half, "f"), (f"{half}b", "f"), ("good", "c"))
    assert said(flow) == [half, f"{half}b", "good"]


def test_a_column_may_end_in_a_handoff() -> None:
    """From a box of another tree nothing leads on: the flow has no edges of it."""
    edges = {"a": (Edge("a", "handoff:other/tree", ""),)}
    leads = {"a": [OutlineEdge("handoff:other/tree")], "handoff:other/tree": []}
    graph = StepGraph("a", leads, frozenset(), frozenset())
    nodes = {name: Node(name, "action", "Look", name) for name in leads}
    flow = Flow("drawn", nodes, edges, outline(graph))
    assert drawn_short(flow).edges == edges
