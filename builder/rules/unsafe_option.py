"""An option that lets a customer drive, work or wait where that isn't safe: driving in before the
setup, leaving a steering, brake or safety fault as it is, working on airbags or high voltage.

Why: Someone gets hurt on the way to the shop, with our paper in the glove box.

Wrong:

    feed:
      check: Are power, loaded ground, and network good?
      does: [check-supply, check-ground, check-network]
      results:
        - {result: all good, done: yes, branch: unit}
        - {result: one is bad, branch: repair}
    unit:
      fix: Replace the module and set it up
      cause: The module failed internally
      weight: 1
      replaces: {module: steering-unit, part: new}
      verify: [road test]
      options:
        drive-in: {option: You install it and drive in, hours: 1.3}

Right:

    feed:
      check: Are power, loaded ground, and network good?
      does: [check-supply, check-ground, check-network]
      results:
        - {result: all good, done: yes, branch: unit}
        - {result: one is bad, branch: repair}
    unit:
      fix: Replace the module and set it up
      cause: The module failed internally
      weight: 1
      replaces: {module: steering-unit, part: new}
      verify: [road test]
      options:
        towed-in: {option: You install it and have it towed in, hours: 1.3, tow: yes}

Fix: Delete the option, or add `not_offered:` with the reason.
"""

from collections.abc import Iterator

from builder.model.ends import Fix
from builder.model.finding import Finding, Severity
from builder.plan.estimate_options import FIT_HERE, refusal_reason
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="unsafe-option",
    family=Family.SETUP,
    severity=Severity.ERROR,
    summary="An option that isn't safe.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every option of a fix that must not be offered."""
    for step in facts.steps:
        if not isinstance(step.body, Fix) or not step.body.replaces:
            continue
        module = facts.library.modules.get(step.body.replaces.module)
        for option in step.body.options:
            reason = refusal_reason(option.id, facts.tree, step.body, module)
            if module and reason and option.id != FIT_HERE and not option.not_offered:
                yield RULE.finding(
                    option.at,
                    f"`{option.id}` must not be offered: {reason}",
                    "someone could get hurt with our paper in hand",
                    "delete the option, or add `not_offered:` with the reason",
                )
