"""A path with more steps than the shop allows (`longest_path` in `site_config/shop.yml`). Moves
that lead back don't count.

Why: Nobody keeps forty steps in mind: halfway through, the tech starts to guess.

Wrong:

    # site_config/shop.yml
    shop: Osei and Lind Motors
    site_address: https://charts.example/
    labor_rate: 140.00
    currency: USD
    longest_path: 3
    stuck: {call: foreman}
    # trees/charging/lamp-on.yml
    steps:
      fuse:
        check: Is the fuse good?
        results:
          - {result: yes, branch: belt}
          - {result: no, branch: repair}
      belt:
        check: Is the belt tight?
        results:
          - {result: yes, branch: plug}
          - {result: no, branch: repair}
      plug:
        check: Is the connector tight?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Right:

    # site_config/shop.yml
    shop: Osei and Lind Motors
    site_address: https://charts.example/
    labor_rate: 140.00
    currency: USD
    longest_path: 3
    stuck: {call: foreman}
    # trees/charging/lamp-on.yml
    steps:
      fuse:
        check: Is the fuse good?
        results:
          - {result: yes, branch: belt}
          - {result: no, branch: repair}
      belt:
        check: Is the belt tight?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Start with a check that splits the causes in half, or hand off to another tree.
"""

from collections.abc import Iterator

from builder.graph.moves import Place
from builder.graph.tree_graph import TreeGraph
from builder.model.finding import Finding, Severity
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="long-path",
    family=Family.FLOW,
    severity=Severity.WARNING,
    summary="A path longer than the shop allows.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding where the longest path has more steps than the shop allows."""
    limit = facts.library.shop.longest_path
    if len(facts.graph.reachable) <= limit or facts.tree.broken:
        return
    path = longest_path(facts.graph)
    if len(path) > limit:
        step = facts.tree.steps[path[limit]]
        shortened = " -> ".join([*path[:2], "...", *path[-2:]])
        yield RULE.finding(
            step.id.at,
            f"a path through this step has {len(path)} steps; limit {limit}: {shortened}",
            "nobody keeps that many steps in mind",
            "start with a check that splits the causes in half, or hand off to another tree",
        )


def longest_path(graph: TreeGraph) -> list[str]:
    """Return the steps of the longest path, each once, without the moves that lead back.

    One depth-first walk: a place is finished when everything it leads to is, and then the longest
    path from it is known; a move to an open place leads back.
    """
    longest: dict[Place, list[str]] = {}
    open_ = {start: iter(graph.moves_from.get(start, ())) for start in graph.starts[:1]}
    while open_:
        here = next(reversed(open_))
        move = next(open_[here], None)
        if move is None:
            targets = (onward.to for onward in graph.moves_from.get(here, ()) if onward.to)
            after = (longest.get(target, []) for target in targets)
            longest[here] = [here.step, *max(after, key=len, default=[])]
            del open_[here]
        elif move.to is not None and move.to not in open_ and move.to not in longest:
            open_[move.to] = iter(graph.moves_from.get(move.to, ()))
    return list(dict.fromkeys(longest[graph.starts[0]]))
