"""The last end of a section stands beside its check, as its last result."""

import pytest

from builder.chart.ends_beside import ends_beside
from builder.chart.flow import Edge, Flow, Node
from builder.plan.outline import ChainStep, OutlineBlock, OutlineSection, SideBranch


def section(check: str, end: str, *leads: str) -> Flow:
    """Write a check that runs straight down to an end; where the end leads, if anywhere."""
    kinds = {"first": "check", "check": check, "side": "fix", "end": end}
    edges = {
        "first": (Edge("first", "check", "good"),),
        "check": (Edge("check", "end", "good"), Edge("check", "side", "bad")),
        "end": tuple(Edge("end", to, "still there") for to in leads),
        "side": (),
    }
    blocks = (
        OutlineBlock("first", (), 0),
        OutlineBlock("check", (SideBranch(1, (ChainStep(1, "side"),)),), 0),
        OutlineBlock("end", tuple(SideBranch(at) for at in range(len(leads))), None),
    )
    nodes = {name: Node(name, kind, "Look", name) for name, kind in kinds.items()}
    return Flow("drawn", nodes, edges, (OutlineSection(blocks), OutlineSection(blocks[-1:])))


@pytest.mark.parametrize("check", ["check", "run"])
@pytest.mark.parametrize("end", ["fix", "stop", "return", "handoff"])
def test_an_end_is_the_last_result_of_its_check(check: str, end: str) -> None:
    """What stands alone, or before it, stays where it is."""
    flow = section(check, end)
    first, alone = ends_beside(flow).sections
    assert first.blocks[:-1] == flow.sections[0].blocks[:1]
    assert first.blocks[-1] == OutlineBlock(
        "check",
        (SideBranch(1, (ChainStep(1, "side"),)), SideBranch(0, (ChainStep(0, "end"),))),
        None,
    )
    assert alone == flow.sections[1]


@pytest.mark.parametrize(
    ("check", "end", "leads"),
    [("check", "fix", ("first",)), ("check", "action", ()), ("action", "fix", ())],
)
def test_other_ways_run_straight_down(check: str, end: str, leads: tuple[str, ...]) -> None:
    """From an action, to what is no end, and to a fix with a way of its own beside it."""
    flow = section(check, end, *leads)
    assert ends_beside(flow) == flow


def test_a_check_alone_with_its_end_is_one_block() -> None:
    """Two blocks are enough."""
    flow = section("check", "fix")
    blocks = flow.sections[0].blocks[1:]
    short = ends_beside(Flow("drawn", flow.nodes, flow.edges, (OutlineSection(blocks),)))
    assert [block.step for block in short.sections[0].blocks] == ["check"]
