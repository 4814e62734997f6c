"""An option that lets a customer drive, work or wait where that isn't safe: driving in before the
setup, leaving a vehicle as it is that must not be driven, working on airbags or high voltage. And
one that contradicts `drive`: not offered as unsafe where the vehicle may be driven.

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

Fix: Delete the option, or add `not_offered:` with the reason. Where `drive` is wrong, correct it:
it decides whether the vehicle can be left as it is.
"""

import re
from collections.abc import Iterator

from builder.model.ends import Drive, Fix, FixOption
from builder.model.finding import Finding, Severity
from builder.plan.drive_advice import DriveAdvice, drive_advice
from builder.plan.refused_options import FIT_HERE, LEAVE, refusal_reason
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="unsafe-option",
    family=Family.SETUP,
    severity=Severity.ERROR,
    summary="An option that isn't safe.",
)


UNSAFE = re.compile(
    r"\b(?:not|isn't|un|don't|never)[ -]?(?:be )?(?:safe|drive|driven)\b", re.IGNORECASE
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every option that must not be offered, or that contradicts `drive`."""
    for step in facts.steps:
        if not isinstance(step.body, Fix):
            continue
        fix, advice = step.body, drive_advice(facts.tree, step.id)
        module = facts.library.modules.get(fix.replaces.module) if fix.replaces else None
        for option in fix.options:
            reason = refusal_reason(option.id, facts.tree, fix, module, advice)
            if reason and option.id != FIT_HERE and not option.not_offered:
                yield RULE.finding(
                    option.at,
                    f"`{option.id}` must not be offered: {reason}",
                    "someone could get hurt with our paper in hand",
                    "add `not_offered:` with the reason",
                )
            elif option.not_offered and advice and not reason:
                yield from _contradiction(option, advice)


def _contradiction(option: FixOption, advice: DriveAdvice) -> Iterator[Finding]:
    """Yield a finding where an option is refused though the vehicle may be driven."""
    if advice.drive is Drive.NO or option.not_offered is None:
        return
    if option.id == LEAVE or UNSAFE.search(option.not_offered):
        yield RULE.finding(
            option.not_offered.at,
            f"`{option.id}` is refused, but this end says `drive: {advice.drive}`",
            "the customer reads that it may be driven, and next to it that it may not",
            "write `drive: no` with `why` at this fix, or delete the option",
        )
