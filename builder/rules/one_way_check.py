"""A check whose results all lead to the same place, or that has only one result.

Why: It costs minutes at the vehicle and decides nothing. If the other result was forgotten, a tech
who finds it is stuck.

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

Fix: Lead one result elsewhere, or add the one that was forgotten. If the result only has to be
recorded, make it an `action` with `write_down`.
"""

from collections.abc import Iterator

from builder.model.checks import Check, Result
from builder.model.finding import Finding, Severity
from builder.model.tree import Step
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
        targets = [result.branch.text for result in step.body.results]
        if len(targets) == 1:
            yield _of_single(step, step.body.results[0])
        elif all(target == targets[0] for target in targets):
            yield RULE.finding(
                targets[0].at,
                f"every result of `{step.id}` leads to `{targets[0]}`",
                "the check costs minutes and decides nothing",
                "lead one result elsewhere, or make it an action with `write_down`",
            )


def _of_single(step: Step, result: Result) -> Finding:
    """Return the finding for the only result of a check: most often the other one was forgotten."""
    other = {"yes": ", such as `no`,", "no": ", such as `yes`,"}.get(result.text, "")
    return RULE.finding(
        result.branch.text.at,
        f"`{result.text}` is the only result of `{step.id}`",
        "a tech who finds anything else is stuck",
        f"add the other result{other} with its branch; where there is nothing to decide, make it "
        "an action with `write_down`",
    )
