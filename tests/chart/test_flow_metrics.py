"""The narrowest chart still has room for its longest word, wherever it stands."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

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
from builder.model.knowledge import Signal
from builder.plan.outline import (
    ChainStep,
    OutlineBlock,
    OutlineEdge,
    OutlineSection,
    SideBranch,
    StepGraph,
    outline,
)

WORDS = st.text("abcmw", min_size=1, max_size=20)


def two_ways_back(label: str, fix: str = "i", to_fix: str = "x") -> Flow:
    """Write a check whose results lead to a fix, and back to itself by a connector."""
    edges = {"a": (Edge("a", "b", to_fix), Edge("a", "a", label)), "b": ()}
    leads = {name: [OutlineEdge(edge.target) for edge in out] for name, out in edges.items()}
    sections = outline(StepGraph("a", leads, frozenset({"b"}), frozenset({"a"})))
    nodes = {"a": Node("a", "check", "i", "1"), "b": Node("b", "fix", fix, "2")}
    return Flow("drawn", nodes, edges, sections, nodes_reached_by_number(edges, sections))


@given(label=WORDS)
def test_a_way_back_has_room_for_its_longest_word(label: str) -> None:
    """The word stands beside the line, before the arrow and the number of the step."""
    metrics = flow_metrics(two_ways_back(label))
    word = metrics.labels["a"][1].widest
    assert narrowest_rooms(metrics)[1] >= BESIDE + word + ARROW + metrics.connectors["a"]


@given(word=WORDS)
def test_a_box_has_room_for_its_longest_word(word: str) -> None:
    """Between its rounded ends too."""
    metrics = flow_metrics(two_ways_back("x", word))
    assert narrowest_rooms(metrics)[0] >= metrics.boxes["b"].widest + 2 * metrics.pads["b"]


def test_a_result_inside_a_fix_has_room_for_its_longest_word() -> None:
    """Indented, and between the rounded ends of the fix; it takes no more."""
    metrics = flow_metrics(ends_beside(two_ways_back("x", to_fix="wmmmmmmw")))
    words = metrics.inside["a"][0]
    assert words
    assert narrowest_rooms(metrics)[1] == INDENT + words.widest + 2 * metrics.pads["b"]


@given(label=WORDS)
def test_a_result_above_its_box_has_room_for_its_longest_word(label: str) -> None:
    """It doesn't stand inside a box with a caution."""
    flow = ends_beside(two_ways_back("x", to_fix=label))
    warned = {**flow.nodes, "b": replace(flow.nodes["b"], caution=Signal.WARNING)}
    metrics = flow_metrics(replace(flow, nodes=warned))
    assert narrowest_rooms(metrics)[1] >= BESIDE + metrics.labels["a"][0].widest


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
