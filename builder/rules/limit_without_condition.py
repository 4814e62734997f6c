"""A limit without the condition under which it counts.

Why: 12.6 V is a full battery at rest and a dead alternator at 1500 rpm.

Wrong:

    battery:
      check: Battery voltage
      reading: {unit: V, from: 0, to: 16, resolution: 0.01, origin: common practice}
      results:
        - {result: below 12.4, branch: repair}
        - {result: at least 12.4, branch: all-good}

Right:

    battery:
      check: Battery voltage
      when: [key off, loads off for 5 min]
      reading: {unit: V, from: 0, to: 16, resolution: 0.01, origin: common practice}
      results:
        - {result: below 12.4, branch: repair}
        - {result: at least 12.4, branch: all-good}

Fix: Say in `when` what is on, what is off, how warm and how fast; or name in `same_as` the step
whose method and conditions this one takes.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.rules.shared.limits import conditions_of, measuring_checks
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="limit-without-condition",
    family=Family.READINGS,
    severity=Severity.WARNING,
    summary="A limit without the condition under which it counts.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every check with limits and without conditions."""
    for step, body in measuring_checks(facts):
        phrases = {one.name for one in body.readings if one.one_of}
        limits = [one for one in body.results if one.ranges.keys() - phrases]
        if limits and not conditions_of(facts, step):
            yield RULE.finding(
                step.text.at,
                f"`{step.text}` has the limit `{limits[0].said}` under no condition",
                "the same figure is good at rest and bad at speed",
                "add `when:` with what is on, what is off, how warm, how fast",
            )
