"""A fix without a weight, in a tree with other fixes: how often it is this one.

Why: Without weights the chart can't put the usual path straight down, and the minutes are wrong.

Wrong:

    belt:
      check: Is the belt tight?
      results:
        - {result: yes, branch: alternator}
        - {result: no, branch: repair}
    alternator:
      fix: Replace the alternator
      cause: It does not charge
      verify: [charging voltage is OK]

Right:

    belt:
      check: Is the belt tight?
      results:
        - {result: yes, branch: alternator}
        - {result: no, branch: repair}
    alternator:
      fix: Replace the alternator
      cause: It does not charge
      weight: 5
      verify: [charging voltage is OK]

Fix: Write how often it is this fix compared with the others, as a rough count of jobs.
"""

from collections.abc import Iterator

from builder.model.ends import Fix
from builder.model.finding import Finding, Severity
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="no-weights",
    family=Family.UPKEEP,
    severity=Severity.WARNING,
    summary="A fix without a weight.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every fix without a weight, where there is more than one fix."""
    fixes = [(step, step.body) for step in facts.steps if isinstance(step.body, Fix)]
    for step, fix in fixes:
        if fix.weight is None and len(fixes) > 1:
            yield RULE.finding(
                step.id.at,
                f"fix `{step.id}` has no weight",
                "the minutes and the usual path on the chart depend on it",
                "add `weight:`, a rough count of jobs compared with the other fixes",
            )
