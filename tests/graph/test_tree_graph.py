"""Loops and longest paths: against networkx, a reference library for graphs."""

import networkx as nx
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.graph.tree_graph import loops_in
from builder.model.checks import Branch, Check, Result
from builder.model.library import Library
from builder.model.shop import Shop
from builder.model.text import Number, Text
from builder.model.tree import Step, Symptom, Tree
from builder.rules.long_path import longest_path
from builder.rules.shared.rule import Facts, facts_of
from builder.rules.unbounded_way_back import check

NO_PLACE = Text("").at
SHOP = Shop(Text("Shop"), Text("https://charts.example/"), Number("1"), Text("USD"))
NAMES = [f"s{n}" for n in range(7)]


@st.composite
def judged(draw) -> Facts:
    """Draw a tree of seven checks with any branches, some with `at_most`, each with an end."""
    steps = {}
    for name in NAMES:
        leads = draw(st.lists(st.sampled_from(NAMES), max_size=3))
        results = [Result(NO_PLACE, Text(to), Branch(Text(to), to)) for to in leads]
        results.append(Result(NO_PLACE, Text("out"), Branch(Text("a/b"), None, "a/b")))
        bound = Number("2") if draw(st.booleans()) else None
        body = Check(tuple(results))
        steps[name] = Step(Text(name), NO_PLACE, Text(name), body, at_most=bound)
    tree = Tree("a/drawn", "trees/a/drawn.yml", NO_PLACE, Text("Drawn"), Text("ready"), Text("a"),
                Symptom((Text("fails"),)), steps, "")  # fmt: skip
    return facts_of(tree, Library(SHOP))


def as_networkx(facts: Facts, *, bounded: bool = True) -> "nx.DiGraph[str]":
    """Return the reachable steps and their branches, or only the branches without a limit."""
    steps = facts.tree.steps
    edges = [(m.source.step, m.to.step) for m in facts.graph.moves if m.to]
    return nx.DiGraph([(a, b) for a, b in edges if bounded or not steps[a].at_most])


@settings(max_examples=50, deadline=None)
@given(judged())
def test_every_loop_is_reported_by_one_move(facts: Facts) -> None:
    """Each loop is a real path, and without the closing moves no loop is left."""
    loops = list(loops_in(facts.graph.moves, facts.graph.starts))
    graph = as_networkx(facts)
    for loop in loops:
        assert loop.steps[0] == loop.steps[-1]
        assert nx.is_path(graph, loop.steps)
    graph.remove_edges_from([(loop.closing.source.step, loop.steps[0]) for loop in loops])
    assert nx.is_directed_acyclic_graph(graph)


@settings(max_examples=50, deadline=None)
@given(judged())
def test_a_finding_means_a_loop_without_a_limit(facts: Facts) -> None:
    """There is a finding if and only if a loop has no `at_most` on any of its steps."""
    unbounded = not nx.is_directed_acyclic_graph(as_networkx(facts, bounded=False))
    assert bool(list(check(facts))) == unbounded


@settings(max_examples=50, deadline=None)
@given(judged())
def test_the_longest_path_is_the_longest_without_the_moves_that_lead_back(facts: Facts) -> None:
    """It has the length that networkx finds in the graph without them."""
    graph = as_networkx(facts)
    graph.add_node("s0")
    loops = loops_in(facts.graph.moves, facts.graph.starts)
    graph.remove_edges_from([(loop.closing.source.step, loop.steps[0]) for loop in loops])
    path = longest_path(facts.graph)
    assert nx.is_path(graph, path) or path == ["s0"]
    assert len(path) == nx.dag_longest_path_length(graph) + 1
