"""The narrowest chart still has room for its longest word, wherever it stands."""

import pytest

from builder.chart import results_right, results_under
from builder.chart.ends_beside import ends_beside
from builder.chart.flow import Edge, Flow, Node, nodes_reached_by_number
from builder.chart.flow_metrics import (
    WIDEST_SHEET,
    flow_metrics,
    narrowest_rooms,
    sheet_reference,
)
from builder.chart.measured_word import line_width, measured_words
from builder.chart.spacing import (
    ARROW,
    BESIDE,
    DOUBLE_SIDE,
    INDENT,
    PAD_X,
    ROUND_END,
    SMALL,
    TRUNK,
)
from builder.plan.outline import (
    ChainStep,
    OutlineBlock,
    OutlineEdge,
    OutlineSection,
    SideBranch,
    StepGraph,
    outline,
)


def check_with_a_fix(result: str) -> Flow:
    """Write a check whose results lead to a fix, and back to itself by a connector."""
    edges = {"a": (Edge("a", "b", result), Edge("a", "a", "x")), "b": ()}
    leads = {name: [OutlineEdge(edge.target) for edge in out] for name, out in edges.items()}
    sections = outline(StepGraph("a", leads, frozenset({"b"}), frozenset({"a"})))
    nodes = {"a": Node("a", "check", "i", "1"), "b": Node("b", "fix", "i", "2")}
    return Flow("drawn", nodes, edges, sections, nodes_reached_by_number(edges, sections))


def test_a_result_inside_a_fix_has_room_for_its_longest_word() -> None:
    """Indented, and between the rounded ends of the fix; it takes no more."""
    metrics = flow_metrics(ends_beside(check_with_a_fix("wmmmmmmw")))
    words = metrics.inside["a"][0]
    assert words
    assert narrowest_rooms(metrics)[1] == INDENT + words.widest + 2 * metrics.pads["b"]


def test_the_room_for_a_sheet_is_that_of_the_widest_number() -> None:
    """Whatever sheet a jump leads to."""
    wide = {n: line_width(measured_words(sheet_reference(n), SMALL)) for n in range(1, 100)}
    assert max(wide.values()) == wide[WIDEST_SHEET]


LONG, HEAVY = "W" * 12, "W" * 11  # as long as a word may be, in either weight


def long_word_at(place: str) -> Flow:
    """Write a check with every kind of way out, and a long word at one place."""
    words = {place: HEAVY if place in ("down", "back", "joint", "result") else LONG}
    edges = {
        "check": (
            Edge("check", "handoff", words.get("down", "i")),
            Edge("check", "action", words.get("result", "i")),
            Edge("check", "check", words.get("back", "i")),
        ),
        "action": (Edge("action", "stop", words.get("joint", "i")), Edge("action", "check", "i")),
    }
    kinds = ("check", "action", "stop", "handoff")
    nodes = {kind: Node(kind, kind, words.get(kind, "i"), str(at)) for at, kind in enumerate(kinds)}
    chain = (ChainStep(1, "action"), ChainStep(0, "stop"))
    blocks = (
        OutlineBlock("check", (SideBranch(1, chain), SideBranch(2)), 0),
        OutlineBlock("handoff", (), None),
    )
    return Flow("drawn", nodes, edges | {"stop": (), "handoff": ()}, (OutlineSection(blocks),))


@pytest.mark.parametrize(
    ("place", "in_lane", "beside"),
    [
        ("check", False, 2 * PAD_X),
        ("handoff", False, 2 * (PAD_X + DOUBLE_SIDE)),
        ("down", False, TRUNK + BESIDE + ARROW + 1),
        ("back", True, BESIDE + ARROW + 1),
        ("result", True, BESIDE),
        ("action", True, INDENT + 2 * PAD_X),
        ("stop", True, INDENT + 2 * (PAD_X + ROUND_END)),
        ("joint", True, 2 * INDENT + 2 * BESIDE),
    ],
)
def test_the_narrowest_room_is_no_wider_than_it_must_be(
    place: str, in_lane: bool, beside: float
) -> None:
    """It holds the longest word and what stands beside it; both styles keep to it."""
    metrics = flow_metrics(long_word_at(place))
    pill = {"down": metrics.connectors["handoff"], "back": metrics.connectors["check"]}
    heavy = place in ("down", "back", "joint", "result")
    word = line_width(measured_words(HEAVY if heavy else LONG, SMALL, heavy))
    rooms = narrowest_rooms(metrics)
    assert rooms[in_lane] == pytest.approx(word + beside + pill.get(place, 0))
    under = results_under.least(metrics)
    for widths in (results_right.split(results_right.least(metrics)), (under, under - TRUNK)):
        spare = [width - room for width, room in zip(widths, rooms, strict=True)]
        assert min(spare) == pytest.approx(0)
