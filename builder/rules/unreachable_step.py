"""A step to which no way leads from the start, nor from a tree that hands over into this one.

Why: Somebody wrote the step because it is needed, and nobody will ever be sent there.

Wrong:

    fuse:
      check: Fuse 12 whole
      results:
        - {result: yes, branch: repair}
        - {result: no, branch: repair-feed}
    repair-feed:
      fix: Repair the feed
      cause: Feed open
      weight: 1
      verify: [fuse holds]
    relay:
      check: Relay clicks when switched
      results:
        - {result: yes, branch: repair}
        - {result: no, branch: repair-feed}

Right:

    fuse:
      check: Fuse 12 whole
      results:
        - {result: yes, branch: relay}
        - {result: no, branch: repair-feed}
    repair-feed:
      fix: Repair the feed
      cause: Feed open
      weight: 1
      verify: [fuse holds]
    relay:
      check: Relay clicks when switched
      results:
        - {result: yes, branch: repair}
        - {result: no, branch: repair-feed}

Fix: Let the result after which it is needed branch to it, or delete the step.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="unreachable-step",
    family=Family.FLOW,
    severity=Severity.ERROR,
    summary="A step to which no way leads.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every step that a walk never gets to."""
    for step in facts.steps:
        if step.id not in facts.graph.reachable:
            yield RULE.finding(
                step.id.at,
                f"no way leads to `{step.id}`",
                "whoever follows the tree is never sent here",
                f"let a result branch to `{step.id}`, or delete the step",
            )
