"""The forward graph of a tree: every edge forward, and none back."""

from builder.plan.forward_graph import forward_graph

TREE = """
supply:
  check: Measure battery voltage
  results:
    - {result: low, branch: charge, chance: 0.1}
    - {result: good, branch: module}
charge:
  action: Charge it
  at_most: 1
  spent: battery
  then: supply
battery:
  fix: Replace the battery
  cause: It holds no charge
  still_there: supply
module:
  check: Set the module up
  at_most: 3
  results:
    - {result: done, branch: well}
    - {result: refused, branch: park}
    - {result: silent, branch: network/silent}
park:
  action: Park and set the brake
  then: back
well:
  stop: All is well
  kind: not-found
"""


def test_the_graph_has_every_edge_forward_and_none_back(tree) -> None:
    """Detours that come back (charging, parking) are left out; the spent battery's edge stays."""
    graph = forward_graph(tree(TREE))
    assert {(edge.source, edge.to) for edges in graph.outgoing.values() for edge in edges} == {
        ("supply", "charge"),
        ("supply", "module"),
        ("charge", "battery"),
        ("module", "well"),
        ("module", None),
    }


def test_every_step_comes_before_the_steps_it_leads_to(tree) -> None:
    """The order is topological."""
    graph = forward_graph(tree(TREE))
    assert graph.order[0] == "supply"
    for step, edges in graph.outgoing.items():
        assert all(graph.order.index(step) < graph.order.index(e.to) for e in edges if e.to)


def test_a_tree_without_an_end_has_its_first_step_only(tree) -> None:
    """The check reports it; the graph doesn't fail."""
    graph = forward_graph(
        tree("""
a:
  action: Look
  then: b
b:
  action: Look again
  then: a
""")
    )
    assert graph.order == ("a",)
    assert not any(graph.outgoing.values())


LOOK = """
look:
  check: Which is it
  results:
    - {{result: this, branch: repair}}
    - {{result: that, branch: {that}}}
  cannot_test: other/tree
repair:
  fix: Repair it
  cause: It is old
  still_there: other/tree#step
"""


def test_an_unusual_handoff_counts_if_nothing_else_leads_to_that_tree(tree) -> None:
    """Another tree is a target like a step; `other/tree#step` is a different one than its start."""
    alone = forward_graph(tree(LOOK.format(that="repair")))
    assert [edge.target for edge in alone.outgoing["look"]] == ["repair", "repair", "other/tree"]
    assert [edge.target for edge in alone.outgoing["repair"]] == ["other/tree#step"]
    beside = forward_graph(tree(LOOK.format(that="other/tree")))
    assert [edge.target for edge in beside.outgoing["look"]] == ["repair", "other/tree"]
