"""Minutes of work: cases calculated by hand, outside references, and properties of every tree.

A case is a file in `cases/`: the steps of a tree, and at its head their figures, calculated by
hand. To add a case, add a file.
"""

import re
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path

import networkx as nx
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.model.ends import Fix
from builder.model.tree import Tree
from builder.plan.minutes import minutes_as_json, tree_minutes
from builder.reader.trees import read_tree, tree_files

CASES = sorted((Path(__file__).parent / "cases").glob("*.yml"))
SHOP = Path(__file__).parents[1] / "shop"


def stated_figures(text: str) -> dict[str, Fraction]:
    """Read the figures at the head of a case: `# expected: 27/2`, `# up to belt: 12`."""
    figures = re.findall(r"^# ([a-z][a-z -]*): ([0-9./]+)$", text, re.MULTILINE)
    return {name: Fraction(figure) for name, figure in figures}


def computed_figures(tree: Tree) -> dict[str, Fraction]:
    """Name every figure as the cases do."""
    minutes = tree_minutes(tree)
    figures = {
        "expected": minutes.expected,
        "shortest": minutes.shortest,
        "longest": minutes.longest,
        "wait": minutes.wait,
    }
    figures |= {f"up to {name}": fix.minutes for name, fix in minutes.fixes.items()}
    figures |= {f"left at {name}": left.expected for name, left in minutes.steps.items()}
    figures |= {f"longest at {name}": left.longest for name, left in minutes.steps.items()}
    return figures


@pytest.mark.parametrize("path", CASES, ids=lambda path: path.stem)
def test_a_case_has_the_figures_of_its_head(path: Path, tree) -> None:
    """Every figure at the head of a case, exactly."""
    text = path.read_text(encoding="utf-8")
    figures = computed_figures(tree(text))
    assert {name: figures[name] for name in stated_figures(text)} == stated_figures(text)


def graph_of(tree: Tree) -> "nx.MultiDiGraph[str]":
    """Return the tree for networkx; the length of an edge is the minutes of its target."""
    graph: nx.MultiDiGraph[str] = nx.MultiDiGraph()
    for step in tree.steps.values():
        if not isinstance(step.body, Fix):
            for result in step.body.results:
                to = result.branch.step
                graph.add_edge(step.id, to, minutes=tree.steps[to].minutes)
    return graph


def walks(tree: Tree) -> Iterator[tuple[str, Fraction, Fraction]]:
    """Yield every walk: its fix, its share by the even split over the edges, its minutes.

    Reference: brute force over all paths as networkx lists them; nothing of `builder.plan` is used.
    """
    graph = graph_of(tree)
    weights = {
        step.id: Fraction(step.body.weight)
        for step in tree.steps.values()
        if isinstance(step.body, Fix)
    }
    for fix, weight in weights.items():
        for path in nx.all_simple_edge_paths(graph, tree.start.id, fix):
            names = [tree.start.id, *(edge[1] for edge in path)]
            share = weight / sum(weights.values())
            for name in names[1:]:
                share /= graph.in_degree(name)
            yield (
                fix,
                share,
                sum((Fraction(tree.steps[name].minutes) for name in names), Fraction(0)),
            )


@given(data=st.data())
@settings(max_examples=60, deadline=None)
def test_expected_is_the_average_over_all_walks(acyclic: st.SearchStrategy[Tree], data) -> None:
    """Reference: every path enumerated by networkx, weighed and added up."""
    random_tree = data.draw(acyclic)
    minutes, all_walks = tree_minutes(random_tree), list(walks(random_tree))
    assert minutes.expected == sum(share * length for _, share, length in all_walks)
    for name, fix in minutes.fixes.items():
        ending = [(share, length) for end, share, length in all_walks if end == name]
        assert fix.chance == sum(share for share, _ in ending)
        assert fix.chance * fix.minutes == sum(share * length for share, length in ending)


@given(data=st.data())
@settings(max_examples=60, deadline=None)
def test_shortest_and_longest_are_those_of_networkx(acyclic: st.SearchStrategy[Tree], data) -> None:
    """Reference: networkx, shortest path by Dijkstra and longest path of an acyclic graph."""
    random_tree = data.draw(acyclic)
    minutes, graph = tree_minutes(random_tree), graph_of(random_tree)
    first = random_tree.start.minutes
    ends = [step.id for step in random_tree.steps.values() if isinstance(step.body, Fix)]
    lengths = nx.single_source_dijkstra_path_length(graph, random_tree.start.id, weight="minutes")
    assert minutes.shortest == first + min(lengths[end] for end in ends)
    assert minutes.longest == first + nx.dag_longest_path_length(graph, weight="minutes")


@given(data=st.data())
@settings(max_examples=60, deadline=None)
def test_expected_is_between(acyclic: st.SearchStrategy[Tree], data) -> None:
    """At every step: shortest, expected, longest, in this order."""
    minutes = tree_minutes(data.draw(acyclic))
    for left in minutes.steps.values():
        assert left.shortest <= left.expected <= left.longest


@given(chance=st.decimals(0, 1, places=2), most=st.integers(1, 6), on=st.decimals(0, 1, places=2))
@settings(max_examples=60, deadline=None)
def test_expected_is_between_with_loops(tree, chance, most: int, on) -> None:
    """Two loops, one inside the other, one of them left by `spent`: the range still holds."""
    minutes = tree_minutes(
        tree(f"""
a:
  check: Look
  minutes: 3
  results:
    - {{result: fine, branch: b}}
    - {{result: low, branch: charge, chance: {chance}}}
charge:
  action: Charge
  minutes: 10
  at_most: {most}
  spent: battery
  then: a
b:
  check: Try it
  minutes: 7
  at_most: {most}
  spent: module
  results:
    - {{result: works, branch: cable}}
    - {{result: refused, branch: park, chance: {on}}}
park:
  action: Park
  minutes: 2
  then: back
battery:
  fix: Replace the battery
  cause: It is old
  weight: 2
module:
  fix: Replace the module
  cause: It is dead
  weight: 3
cable:
  fix: Repair the cable
  cause: It is broken
  weight: 5
""")
    )
    for left in minutes.steps.values():
        assert left.shortest <= left.expected <= left.longest
    assert minutes.expected == sum(fix.chance * fix.minutes for fix in minutes.fixes.values())


def test_the_trees_of_a_shop_are_in_range_too() -> None:
    """Whole trees with handoffs, lists and shared actions: in order, and with all repeats."""
    seen = 0
    for path in tree_files(SHOP):
        tree, _ = read_tree(SHOP, path)
        if tree is None or tree.broken:
            continue
        seen += 1
        minutes = tree_minutes(tree)
        assert minutes.includes_repeats, path
        assert minutes.shortest <= minutes.expected <= minutes.longest, path
        assert minutes.longest > 0, path
    assert seen


def test_the_json_has_exactly_the_documented_keys(tree) -> None:
    """Four keys, and two for each fix."""
    minutes = minutes_as_json(
        tree_minutes(tree((Path(__file__).parent / "cases/ladder.yml").read_text()))
    )
    assert minutes == {
        "expected": 9.375,
        "shortest": 6.0,
        "longest": 13.0,
        "fixes": {
            "belt": {"chance": 0.375, "minutes": 6.0},
            "brushes": {"chance": 0.5, "minutes": 11.0},
            "alternator": {"chance": 0.125, "minutes": 13.0},
        },
    }
