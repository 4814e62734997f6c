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

from builder.model.finding import Finding, Severity
from builder.model.tree import Action, Step
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.unreached import dead_ends, first_unreached

RULE = Rule(
    name="dead-end",
    family=Family.FLOW,
    severity=Severity.ERROR,
    summary="A step that is no end and leads nowhere.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every action without `then` and every check without results."""
    why = "the tech at this step doesn't know what comes next"
    for step in dead_ends(facts):
        if isinstance(step.body, Action):
            message = f"action `{step.id}` has no next step"
            hint = f"add `then: {_likely_next(facts, step)}`, or make it a `stop`"
        else:
            message = f"check `{step.id}` has no results"
            hint = f"add `results:`, each with a `branch`{_unreached(facts)}"
        yield RULE.finding(step.id.at, message, why, hint)


def _likely_next(facts: Facts, step: Step) -> str:
    """Return the step below in the file if nothing leads to it, or else another such step."""
    names = [str(name) for name in facts.tree.steps]
    below = names[names.index(step.id) + 1 :][:1]
    unreached = first_unreached(facts)
    return next(iter([*(name for name in below if name in unreached), *unreached]), "<step>")


def _unreached(facts: Facts) -> str:
    names = " and ".join(f"`{name}`" for name in first_unreached(facts))
    return f"; nothing leads to {names} yet" if names else ""
