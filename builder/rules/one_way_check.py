"""A check whose results all lead to the same place.

Why: It costs minutes at the vehicle and decides nothing.

Wrong:

    belt:
      check: Is the belt tight and dry?
      results:
        - {result: yes, branch: repair}
        - {result: no, branch: repair}

Right:

    belt:
      check: Is the belt tight and dry?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Lead one result elsewhere. If the result only has to be recorded, make it an `action` with
`write_down`.
"""

from collections.abc import Iterator

from builder.model.checks import Check
from builder.model.finding import Finding, Severity
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="one-way-check",
    family=Family.FLOW,
    severity=Severity.ERROR,
    summary="A check whose results all lead to the same place.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every check that decides nothing."""
    for step in facts.steps:
        if not isinstance(step.body, Check) or not step.body.results:
            continue
        first = step.body.results[0].branch.text
        if any(result.branch.text != first for result in step.body.results):
            continue
        yield RULE.finding(
            first.at,
            f"every result of `{step.id}` leads to `{first}`",
            "the check costs minutes and decides nothing",
            "lead one result elsewhere, or make it an action with `write_down`",
        )
