"""Checks with many results split for large text."""

from builder.chart.flow import Edge, Flow, Node, nodes_reached_by_number
from builder.chart.split_checks import OTHER_RESULTS, split_checks
from builder.plan.outline import OutlineEdge, StepGraph, outline


def wide(results: int) -> Flow:
    """Make a check with many fixes and a way on."""
    names = [f"fix-{number}" for number in range(results)]
    edges = {
        "check": tuple(Edge("check", name, f"result {name}") for name in names),
        **dict.fromkeys(names, ()),
    }
    leads = {name: [OutlineEdge(edge.target) for edge in out] for name, out in edges.items()}
    sections = outline(StepGraph("check", leads, frozenset(names), frozenset(["check"])))
    nodes = {name: Node(name, "fix", name, str(at)) for at, name in enumerate(names, 2)}
    nodes["check"] = Node("check", "check", "Look", "1", when="it is cold")
    return Flow("wide", nodes, edges, sections, nodes_reached_by_number(edges, sections))


def test_the_parts_have_the_number_of_the_check() -> None:
    """A reader sees that it is still the same check, without its words again."""
    blocks = split_checks(wide(6), 2).sections[0].blocks
    nodes = split_checks(wide(6), 2).nodes
    assert [len(block.sides) for block in blocks] == [2, 2, 1, 0]
    assert [nodes[block.step].number for block in blocks[:3]] == ["1", "1", "1"]
    assert nodes[blocks[1].step].text == "goes on"


def test_every_result_is_still_there_once() -> None:
    """Parting moves results, it loses none and repeats none."""
    flow = split_checks(wide(6), 2)
    said = [
        flow.edges[block.step][lead].label
        for block in flow.sections[0].blocks
        for lead in [*(side.edge_index for side in block.sides), block.down]
        if lead is not None
    ]
    assert sorted(label for label in said if label != OTHER_RESULTS) == [
        f"result fix-{number}" for number in range(6)
    ]


def test_a_check_with_few_results_is_left_alone() -> None:
    """Nothing is split that need not be."""
    assert split_checks(wide(3), 3) == wide(3)
