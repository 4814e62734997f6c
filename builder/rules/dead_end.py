"""An action without a next step, or a check without results.

Why: The work is done and the tech doesn't know what comes next.

Wrong:

    charge:
      action: Charge the battery

Right:

    charge:
      action: Charge the battery
      then: all-good

Fix: Give the action a `then`, give the check its results, or make it a `stop`.
"""

from collections.abc import Iterator

from builder.model.checks import Check
from builder.model.finding import Finding, Severity
from builder.model.tree import Action
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="dead-end",
    family=Family.FLOW,
    severity=Severity.ERROR,
    summary="A step that is no end and leads nowhere.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every action without `then` and every check without results."""
    why = "the tech at this step doesn't know what comes next"
    for step in facts.steps:
        match step.body:
            case Action(then=None):
                message = f"action `{step.id}` has no next step"
                hint = "add `then: <step>`, or make it a `stop`"
                yield RULE.finding(step.id.at, message, why, hint)
            case Check(results=()):
                message = f"check `{step.id}` has no results"
                hint = "add `results:`, each with a `branch`"
                yield RULE.finding(step.id.at, message, why, hint)
