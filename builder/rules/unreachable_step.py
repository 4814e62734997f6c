"""A step that nothing leads to: no path from the start, and no handoff from another tree.

Why: Someone wrote the step because it's needed, and nobody will ever see it.

Wrong:

    fuse:
      check: Is fuse 12 good?
      results:
        - {result: yes, branch: repair}
        - {result: no, branch: repair-feed}
    repair-feed:
      fix: Repair the power wire
      cause: The power wire is open
      weight: 1
      verify: [fuse holds]
    relay:
      check: Does the relay click when switched?
      results:
        - {result: yes, branch: repair}
        - {result: no, branch: repair-feed}

Right:

    fuse:
      check: Is fuse 12 good?
      results:
        - {result: yes, branch: relay}
        - {result: no, branch: repair-feed}
    repair-feed:
      fix: Repair the power wire
      cause: The power wire is open
      weight: 1
      verify: [fuse holds]
    relay:
      check: Does the relay click when switched?
      results:
        - {result: yes, branch: repair}
        - {result: no, branch: repair-feed}

Fix: Branch to it from the result that needs it, or delete the step.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="unreachable-step",
    family=Family.FLOW,
    severity=Severity.ERROR,
    summary="A step that nothing leads to.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every step that a walk never reaches."""
    for step in facts.steps:
        if step.id not in facts.graph.reachable:
            yield RULE.finding(
                step.id.at,
                f"nothing leads to `{step.id}`",
                "nobody will ever see this step",
                "branch to it from a result, or delete it",
            )
