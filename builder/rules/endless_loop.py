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

Mend: Let one of the steps on the way lead out of it: to a fix, a stop or another tree.
"""

from collections.abc import Iterator

from builder.graph.tree_graph import ways_round
from builder.model.finding import Finding, Severity
from builder.rules.shared.rule import Facts, Rule

RULE = Rule(
    name="endless-loop",
    family="flow",
    severity=Severity.ERROR,
    summary="A way round that never comes to an end.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every way round from which no end can be reached."""
    graph = facts.graph
    inside = [move for move in graph.moves if move.source not in graph.ending]
    for way in ways_round(inside, graph.starts):
        branch = way.closing.route.exit.branch
        yield RULE.finding(
            branch.text.at,
            f"no end can be reached from here: {way.shown}",
            "whoever follows it goes round and never gets an answer",
            f"let one step of {way.shown} lead to a fix, a stop or another tree",
        )
