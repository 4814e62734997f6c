"""A step that brings a hazard without a caution: the module's record names the hazard for what the
step does, or the step's article names it, and nothing has named it before on every path: not the
step or an earlier one, nor a state of the vehicle that was entered. Of an article this goes for a
DANGER, and for a WARNING that the step's own lines tell of, such as `Let it cool, open the cap`. It
carries the others itself, since not every use of it brings them.

Why: The tech learns about the hazard with a hand already in it.

Wrong:

    isolation:
      check: Measure isolation of the orange cables
      how_to: isolation-test
      results:
        - {result: good, branch: all-good}
        - {result: bad, branch: repair}

Right:

    isolation:
      check: Measure isolation of the orange cables
      how_to: isolation-test
      hazards: [high-voltage]
      results:
        - {result: good, branch: all-good}
        - {result: bad, branch: repair}

Fix: Add the hazard to `hazards` of the step, or of an earlier step on every path.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.rules.shared.late_cautions import late_cautions
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="caution-before-hazard",
    family=Family.ORDER,
    severity=Severity.ERROR,
    summary="A step brings a hazard with no caution before it.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every hazard that a path brings before its caution."""
    if facts.tree.broken:
        return  # the caution may be in what can't be read
    for late in late_cautions(facts):
        yield RULE.finding(
            late.cause.at,
            f"`{late.cause}` brings the hazard `{late.hazard}` with no caution before it: "
            f"{late.path}",
            "the tech learns about it too late",
            f"add `hazards: [{late.hazard}]` to `{late.step}` or an earlier step",
        )
