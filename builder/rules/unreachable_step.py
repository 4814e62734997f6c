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
from builder.rules.shared.unreached import dead_ends, first_unreached

RULE = Rule(
    name="unreachable-step",
    family=Family.FLOW,
    severity=Severity.ERROR,
    summary="A step that nothing leads to.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for each step that nothing leads to, but not for those behind it.

    Where the tree has a dead end, that is the place to correct, and `dead-end` names these steps.
    """
    if any(step.id in facts.graph.reachable for step in dead_ends(facts)):
        return
    for name in first_unreached(facts):
        yield RULE.finding(
            facts.tree.steps[name].id.at,
            f"nothing leads to `{name}`",
            "nobody will ever see this step",
            f"write `branch: {name}` at a result, or delete the step",
        )
