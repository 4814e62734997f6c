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

Fix: Put a check that parts the causes in half first, or hand over to a tree of its own.
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
    most = facts.library.shop.longest_path
    if len(facts.graph.reachable) <= most or facts.tree.broken:
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


def longest_path(graph: TreeGraph) -> list[str]:
    """Return the steps of the longest path, each once, without the moves that lead back.

    One walk in depth: a place is finished when all that it leads to is, so that the longest way on
    from it is known; a move to a place that is not finished leads back.
    """
    onward = graph.moves_from
    longest: dict[Place, list[str]] = {}
    open_ = {start: iter(onward.get(start, ())) for start in graph.starts[:1]}
    while open_:
        here = next(reversed(open_))
        move = next(open_[here], None)
        if move is None:
            after = (longest.get(one.to, []) for one in onward.get(here, ()) if one.to)
            longest[here] = [here.step, *max(after, key=len, default=[])]
            del open_[here]
        elif move.to is not None and move.to not in open_ and move.to not in longest:
            open_[move.to] = iter(onward.get(move.to, ()))
    return list(dict.fromkeys(longest[graph.starts[0]]))
