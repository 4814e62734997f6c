"""An option that lets a customer drive, work or wait where that is not safe: to drive in before the
set-up, to leave as it is what steers, brakes or protects, to work on airbags or high voltage.

Why: Somebody is hurt on the way to the shop, with our paper in the glove box.

Wrong:

    feed:
      check: Plus, ground under load and both wires good
      does: [check-supply, check-ground, check-network]
      results:
        - {result: all good, done: yes, branch: unit}
        - {result: one is not, branch: repair}
    unit:
      fix: Fit a new unit and set it up
      cause: Unit faulty inside
      weight: 1
      replaces: {module: steering-unit, part: new}
      verify: [road test]
      options:
        drive-in: {option: You fit it and drive in, hours: 1.3}

Right:

    feed:
      check: Plus, ground under load and both wires good
      does: [check-supply, check-ground, check-network]
      results:
        - {result: all good, done: yes, branch: unit}
        - {result: one is not, branch: repair}
    unit:
      fix: Fit a new unit and set it up
      cause: Unit faulty inside
      weight: 1
      replaces: {module: steering-unit, part: new}
      verify: [road test]
      options:
        towed-in: {option: You fit it and have it towed in, hours: 1.3, tow: yes}

Fix: Take the option out, or give it `not_offered:` with the reason.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.model.tree import Fix
from builder.plan.options import FIT_HERE, refusal
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="unsafe-option",
    family=Family.SETUP,
    severity=Severity.ERROR,
    summary="An option that is not safe.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every option written in a fix that must not be offered."""
    for step in facts.steps:
        if not isinstance(step.body, Fix) or not step.body.replaces:
            continue
        module = facts.library.modules.get(step.body.replaces.module)
        for option in step.body.options:
            reason = refusal(option.id, facts.tree, step.body, module)
            if module and reason and option.id != FIT_HERE and not option.not_offered:
                yield RULE.finding(
                    option.at,
                    f"`{option.id}` must not be offered: {reason}",
                    "somebody could be hurt, with our own paper in hand",
                    "take the option out, or give it `not_offered:` with the reason",
                )
