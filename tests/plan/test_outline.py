"""The reading order: one place for every step, the heaviest edge straight down."""

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from builder.plan.outline import (
    ChainStep,
    OutlineEdge,
    SideBranch,
    StepGraph,
    outline,
    reading_order,
)


def graph_of(edges: dict[str, list[str | tuple[str, int]]], checks: str = "") -> StepGraph:
    """Make a graph; a target may come with a weight, and a step without edges is an end."""
    outgoing = {
        step: [
            OutlineEdge(*target) if isinstance(target, tuple) else OutlineEdge(target)
            for target in targets
        ]
        for step, targets in edges.items()
    }
    ends = frozenset(step for step, targets in outgoing.items() if not targets)
    return StepGraph(next(iter(edges)), outgoing, ends, frozenset(checks.split()))


def test_the_heaviest_edge_runs_straight_down() -> None:
    """Weight counts before length, and a step with more checks after it beats a heavier end."""
    graph = graph_of(
        {
            "a": [("b", 1), ("c", 3), ("x", 9)],
            "b": ["d"],
            "d": ["x"],
            "c": ["x"],
            "x": [],
        },
        "a b c d",
    )
    first, second = outline(graph)
    assert [block.step for block in first.blocks] == ["a", "c", "x"]
    assert [block.step for block in second.blocks] == ["b", "d", "x"]


def test_of_equal_edges_the_longest_path_runs_straight_down() -> None:
    """Without weights a reader follows the longest procedure."""
    edges = {"a": ["b", "c"], "b": ["e"], "c": ["x", "d"], "d": ["f"], "e": ["x"], "f": ["x"]}
    first, _ = outline(graph_of({**edges, "x": []}, "a b c d e f"))
    assert [block.step for block in first.blocks] == ["a", "c", "d", "f", "x"]


def test_of_equal_edges_the_first_in_the_file_runs_straight_down() -> None:
    """Same weight, same length: the author's order decides."""
    graph = graph_of({"a": ["b", "c"], "b": ["x"], "c": ["x"], "x": []}, "a b c")
    assert [block.step for block in outline(graph)[0].blocks] == ["a", "b", "x"]


def test_where_order_decides_only_the_last_edge_runs_straight_down() -> None:
    """The first result that fits counts: a heavier edge before the last is not drawn after it."""
    graph = replace(
        graph_of({"a": [("b", 9), "c", "x"], "b": ["x"], "c": ["x"], "x": []}, "a b c"),
        ordered={"a": 1},
    )
    first, second = outline(graph)
    assert [block.step for block in first.blocks] == ["a", "c", "x"]
    assert first.blocks[0].sides[0] == SideBranch(0)
    assert [block.step for block in second.blocks] == ["b", "x"]


def test_a_branch_that_ends_at_once_is_beside_its_check() -> None:
    """A fix, or an action that leads to a fix, is drawn right there."""
    graph = graph_of({"a": ["x", "do", "b"], "do": ["y"], "b": ["y"], "x": [], "y": []}, "a b")
    (section,) = outline(graph)
    assert section.blocks[0].sides == (
        SideBranch(0, (ChainStep(0, "x"),)),
        SideBranch(1, (ChainStep(1, "do"), ChainStep(0, "y"))),
    )


def test_a_long_chain_becomes_a_section_of_its_own() -> None:
    """Two actions and their end stand beside a check; with one more they are read on their own."""
    short = {"a": ["one", "b"], "one": ["two"], "two": ["x"], "b": ["y"], "x": [], "y": []}
    assert len(outline(graph_of(short, "a b"))) == 1
    longer = {"a": ["one", "b"], "one": ["two"], "two": ["more"], "more": ["x"], "b": ["c"],
              "c": ["d"], "d": ["e"], "e": ["y"], "x": [], "y": []}  # fmt: skip
    first, second = outline(graph_of(longer, "a b c d e"))
    assert [block.step for block in first.blocks] == ["a", "b", "c", "d", "e", "y"]
    assert [block.step for block in second.blocks] == ["one", "two", "more", "x"]


def test_sections_follow_in_the_order_met_whatever_the_order_of_the_file() -> None:
    """A reader finds the next section where the results left off, not where it was written."""
    graph = graph_of(
        {
            "a": ["p", "q", ("b", 5)],
            "b": ["x"],
            "r": ["s"],
            "s": ["x"],
            "q": ["x"],
            "p": ["r", ("t", 1)],
            "t": ["x"],
            "x": [],
        },
        "a b p q r s t",
    )
    heads = [section.blocks[0].step for section in outline(graph)]
    assert heads == ["a", "p", "r", "q"]


def test_an_action_with_two_ways_on_is_not_drawn_beside_a_check() -> None:
    """Beside a check there is room for one way straight to an end."""
    graph = graph_of(
        {"a": ["do", "b"], "do": ["x", "y"], "b": ["c"], "c": ["x"], "x": [], "y": []}, "a b c"
    )
    assert [[block.step for block in section.blocks] for section in outline(graph)] == [
        ["a", "b", "c", "x"],
        ["do", "x"],
    ]


def test_a_step_met_again_is_a_connector() -> None:
    """Loops and merged checks lead to the one place of the step."""
    graph = graph_of({"a": ["b", "c"], "b": ["c", "a"], "c": ["x"], "x": []}, "a b c")
    (section,) = outline(graph)
    assert [block.step for block in section.blocks] == ["a", "b", "c", "x"]
    assert section.blocks[0].sides == (SideBranch(1),)
    assert section.blocks[1].sides == (SideBranch(1),)


def test_side_sections_follow_in_the_order_met() -> None:
    """Each side section is followed by its own side sections before the next begins."""
    graph = graph_of(
        {
            "a": ["p", "q", ("b", 5)],
            "b": [("x", 1)],
            "p": ["r", ("x", 1)],
            "q": ["x"],
            "r": ["x"],
            "x": [],
        },
        "a b p q r",
    )
    heads = [section.blocks[0].step for section in outline(graph)]
    assert heads == ["a", "p", "q"]
    steps = [step for step in reading_order(outline(graph)) if step != "x"]
    assert steps == ["a", "b", "p", "r", "q"]


def test_unreachable_steps_come_last() -> None:
    """A half-written tree keeps all its steps."""
    graph = graph_of({"a": ["x"], "lost": ["y"], "x": [], "y": []}, "a lost")
    assert list(reading_order(outline(graph))) == ["a", "x", "lost", "y"]


@st.composite
def graphs(draw: st.DrawFn) -> StepGraph:
    """Draw any graph at all, with loops and unreachable steps."""
    count = draw(st.integers(1, 12))
    names = [str(number) for number in range(count)]
    edges = {
        name: [OutlineEdge(target, draw(st.integers(0, 3)))
               for target in draw(st.lists(st.sampled_from(names), max_size=4))]
        for name in names
    }  # fmt: skip
    ends = frozenset(name for name in names if not edges[name])
    checks = frozenset(draw(st.lists(st.sampled_from(names))))
    return StepGraph("0", edges, ends, checks)


@given(graphs())
@settings(max_examples=150, deadline=None)
def test_every_step_has_a_place_and_only_ends_repeat(graph: StepGraph) -> None:
    """No step is lost and only ends are repeated, in any graph."""
    steps = list(reading_order(outline(graph)))
    assert set(steps) == set(graph.edges)
    assert all(steps.count(step) == 1 for step in graph.edges if step not in graph.ends)


@given(graphs())
@settings(max_examples=150, deadline=None)
def test_every_edge_is_drawn_once(graph: StepGraph) -> None:
    """Each edge of a block runs down or branches off, never both."""
    for section in outline(graph):
        for block in section.blocks:
            drawn = [side.edge_index for side in block.sides]
            drawn += [block.down] if block.down is not None else []
            assert sorted(drawn) == list(range(len(graph.edges[block.step])))


def test_a_section_ends_with_an_end_that_is_drawn_again() -> None:
    """Ends that lead to each other, as failed verifications do, are drawn again only once."""
    edges = {"a": [OutlineEdge("b")], "b": [OutlineEdge("c")], "c": [OutlineEdge("b")]}
    sections = outline(StepGraph("a", edges, ends={"b", "c"}, checks={"a"}))
    assert [block.step for block in sections[0].blocks] == ["a", "b", "c", "b"]
