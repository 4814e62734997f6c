"""A step runs a procedure that doesn't exist.

Why: The tech opens the step in the bay and there is nothing to follow.

Wrong:

    feed:
      check: Are power and ground good at the radio?
      by: power-and-gruond
      results: {good: all-good, bad: repair}

Right:

    # kb/procedures/power-and-ground.yml
    title: Are power and ground good under load?
    returns: [good, bad]
    steps:
      feed:
        check: Does a headlight bulb glow bright at the pins?
        results:
          - {result: yes, return: good}
          - {result: no, return: bad}
    # trees/charging/case.yml
    steps:
      feed:
        check: Are power and ground good at the radio?
        by: power-and-ground
        results:
          - {result: good, branch: all-good}
          - {result: bad, branch: repair}

Fix: Write the procedure as its file in `kb/procedures/` is called, or write that file.
"""

from collections.abc import Iterator

from builder.model.checks import Check
from builder.model.finding import Finding, Severity
from builder.rules.shared.close_names import unknown_names
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="no-such-procedure",
    family=Family.PROCEDURES,
    severity=Severity.ERROR,
    summary="A step runs a procedure that doesn't exist.",
)
WHY = "the tech finds nothing to follow at this step"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every `by` that names no procedure."""
    names = (step.body.by for step in facts.steps if isinstance(step.body, Check) and step.body.by)
    yield from unknown_names(RULE, names, facts.library, WHY)
