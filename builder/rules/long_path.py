"""A path longer than the shop allows (`longest_path` in `site_config/shop.yml`). Ways back are not
counted.

Why: Nobody keeps forty steps in mind; half way through the technician starts to guess.

Wrong:

    # site_config/shop.yml
    shop: Osei and Lind Motors
    site_address: https://charts.example/
    labour_rate: 140.00
    currency: USD
    longest_path: 3
    stuck: {call: foreman}
    # trees/charging/lamp-on.yml
    steps:
      fuse:
        check: Fuse whole
        results:
          - {result: yes, branch: belt}
          - {result: no, branch: repair}
      belt:
        check: Belt tight
        results:
          - {result: yes, branch: plug}
          - {result: no, branch: repair}
      plug:
        check: Plug tight
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Right:

    # site_config/shop.yml
    shop: Osei and Lind Motors
    site_address: https://charts.example/
    labour_rate: 140.00
    currency: USD
    longest_path: 3
    stuck: {call: foreman}
    # trees/charging/lamp-on.yml
    steps:
      fuse:
        check: Fuse whole
        results:
          - {result: yes, branch: belt}
          - {result: no, branch: repair}
      belt:
        check: Belt tight
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Mend: Put a check that parts the causes in half first, or hand over to a tree of its own.
"""

from collections.abc import Iterator

import networkx as nx

from builder.model.finding import Finding, Severity
from builder.model.paths import Place
from builder.rules.graph import END, Graph, ways_round
from builder.rules.rule import Facts, Rule

RULE = Rule(
    name="long-path",
    family="flow",
    severity=Severity.WARNING,
    summary="A path longer than the shop allows.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding where the longest path has more steps than the shop allows."""
    most = facts.library.shop.longest_path
    if len(facts.graph.reached) <= most or facts.tree.broken:
        return
    path = longest_path(facts.graph)
    if len(path) > most:
        step = facts.tree.steps[path[most]]
        shown = " -> ".join([*path[:2], "...", *path[-2:]])
        yield RULE.finding(
            step.id.at,
            f"a path of {len(path)} steps leads through here: {shown}; the shop allows {most}",
            "nobody keeps that many steps in mind",
            "put a check that parts the causes in half first, or hand over to a tree of its own",
        )


def longest_path(graph: Graph) -> list[str]:
    """Return the steps of the longest path, each once, without the moves that lead back."""
    back = {(way.closing.source, way.closing.to) for way in ways_round(graph.moves, graph.starts)}
    forward: nx.DiGraph[Place] = nx.DiGraph()
    forward.add_nodes_from(place for place in graph.digraph if place != END)
    forward.add_edges_from(
        (move.source, move.to)
        for move in graph.moves
        if move.to is not None and (move.source, move.to) not in back
    )
    places = nx.dag_longest_path(forward)
    return list(dict.fromkeys(place.step for place in places))
