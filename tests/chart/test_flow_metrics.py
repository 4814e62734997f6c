"""The narrowest chart still has room for its longest word, wherever it stands."""

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from builder.chart.ends_beside import ends_beside
from builder.chart.flow import Edge, Flow, Node, nodes_reached_by_number
from builder.chart.flow_metrics import (
    WIDEST_SHEET,
    flow_metrics,
    narrowest_rooms,
    sheet_reference,
)
from builder.chart.measured_word import line_width, measured_words
from builder.chart.spacing import ARROW, BESIDE, INDENT, SMALL
from builder.model.knowledge import Signal
from builder.plan.outline import OutlineEdge, StepGraph, outline

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
