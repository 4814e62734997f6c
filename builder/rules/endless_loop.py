"""A loop from which no fix, no stop and no other tree can be reached.

Why: The tech goes around and around on the clock and never gets an answer.

Wrong:

    charge:
      action: Charge the battery
      then: rest
    rest:
      action: Let it rest for 1 h
      then: charge

Right:

    charge:
      action: Charge the battery
      then: rest
    rest:
      action: Let it rest for 1 h
      then: voltage
    voltage:
      check: Does the battery hold its charge?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Lead one of the loop's steps out of it: to a fix, a stop or another tree.
"""

from collections.abc import Iterator

from builder.graph.tree_graph import loops_in
from builder.model.finding import Finding, Severity
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="endless-loop",
    family=Family.FLOW,
    severity=Severity.ERROR,
    summary="A loop that never ends.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every loop from which no end can be reached."""
    graph = facts.graph
    places = [place for place in graph.moves_from if place not in graph.can_end]
    inside = [move for place in places for move in graph.moves_from[place]]
    for loop in loops_in(inside, graph.starts):
        branch = loop.closing.route.exit.branch
        yield RULE.finding(
            branch.text.at,
            f"this loop never ends: {loop.text}",
            "the tech goes around and around and never gets an answer",
            "lead one of these steps to a fix, a stop or another tree",
        )
