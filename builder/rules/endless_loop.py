"""A way round from which no fix, no stop and no other tree can be reached.

Why: Whoever follows it goes round and round at the vehicle, on the clock, and never gets an answer.

Wrong:

    charge:
      action: Charge the battery
      then: rest
    rest:
      action: Let it rest for an hour
      then: charge

Right:

    charge:
      action: Charge the battery
      then: rest
    rest:
      action: Let it rest for an hour
      then: voltage
    voltage:
      check: Battery holds its charge
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Let one of the steps on the way lead out of it: to a fix, a stop or another tree.
"""

from collections.abc import Iterator

from builder.graph.tree_graph import loops_in
from builder.model.finding import Finding, Severity
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="endless-loop",
    family=Family.FLOW,
    severity=Severity.ERROR,
    summary="A way round that never comes to an end.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every way round from which no end can be reached."""
    graph = facts.graph
    inside = [move for move in graph.moves if move.source not in graph.can_end]
    for loop in loops_in(inside, graph.starts):
        branch = loop.closing.route.exit.branch
        yield RULE.finding(
            branch.text.at,
            f"no end can be reached from here: {loop.text}",
            "whoever follows it goes round and never gets an answer",
            f"let one step of {loop.text} lead to a fix, a stop or another tree",
        )
