"""A limit without the condition under which it applies.

Why: 12.6 V is a full battery after sitting, and a dead alternator at 1500 rpm.

Wrong:

    battery:
      check: Measure battery voltage
      reading: {unit: V, from: 0, to: 16, resolution: 0.01, origin: common practice}
      results:
        - {result: below 12.4, branch: repair}
        - {result: at least 12.4, branch: all-good}

Right:

    battery:
      check: Measure battery voltage
      when: [key-off, loads off for 5 min]
      reading: {unit: V, from: 0, to: 16, resolution: 0.01, origin: common practice}
      results:
        - {result: below 12.4, branch: repair}
        - {result: at least 12.4, branch: all-good}

Fix: Name a state in `when`, or say what is on, what is off, how warm and how fast; or name in
`same_as` the step whose method and conditions this one uses.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.rules.shared.limits import has_conditions, measuring_checks
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="limit-without-condition",
    family=Family.READINGS,
    severity=Severity.WARNING,
    summary="A limit without the condition under which it applies.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every check with limits and without conditions."""
    for step, body in measuring_checks(facts):
        phrases = {reading.name for reading in body.readings if reading.one_of}
        limits = [result for result in body.results if result.ranges.keys() - phrases]
        if limits and not has_conditions(facts, step):
            yield RULE.finding(
                step.text.at,
                f"`{step.text}` has the limit `{limits[0].text}` but no condition",
                "the same reading is good key off and bad at 1500 rpm",
                "add `when:` with what is on, what is off, how warm and how fast",
            )
