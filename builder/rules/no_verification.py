"""A fix that doesn't say how to verify the repair.

Why: Without a test, the customer finds out and comes back.

Wrong:

    belt:
      fix: Replace the belt
      cause: The belt slips
      weight: 1

Right:

    belt:
      fix: Replace the belt
      cause: The belt slips
      weight: 1
      verify: [charging voltage is OK under load]

Fix: Add `verify:` with the check that failed, repeated under the same conditions.
"""

from collections.abc import Iterator

from builder.model.ends import Fix
from builder.model.finding import Finding, Severity
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="no-verification",
    family=Family.UPKEEP,
    severity=Severity.WARNING,
    summary="A fix without a verification.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every fix without `verify`."""
    for step in facts.steps:
        if isinstance(step.body, Fix) and not step.body.verify:
            yield RULE.finding(
                step.id.at,
                f"fix `{step.id}` doesn't say how to verify the repair",
                "without a test, the customer finds out and comes back",
                "add `verify:` with the check that failed, repeated under the same conditions",
            )
