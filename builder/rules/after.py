"""A step that says in `after` what must come first, to which a path leads without it.

Why: The author knew that the order matters; on this path the reading means nothing, or hurts.

Wrong:

    key:
      check: Key off for five minutes already
      results:
        - {result: yes, branch: measure}
        - {result: no, branch: sleep}
    sleep:
      action: Key off, wait five minutes
      then: measure
    measure:
      check: Both wires quiet
      after: [sleep]
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    sleep:
      action: Key off, wait five minutes
      then: measure
    measure:
      check: Both wires quiet
      after: [sleep]
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Lead every path through the step that must come first, or take it out of `after`.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.rules.shared.order import path_as_text, reached_steps, without_step
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.suggestions import suggestion

RULE = Rule(
    name="after",
    family=Family.ORDER,
    severity=Severity.ERROR,
    summary="A step is reached before what must come first.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every step that is not always reached after what it names."""
    names = {str(name): None for step in facts.steps for name in step.after}
    found = {name: without_step(facts, name) for name in names if name in facts.tree.steps}
    for name, lack in found.items():
        for step, place in reached_steps(lack, facts):
            for after in step.after:
                if after == name:
                    yield RULE.finding(
                        after.at,
                        f"`{step.id}` can be reached without `{name}`: {path_as_text(lack, place)}",
                        "on this path it means nothing, or can hurt",
                        f"lead this path through `{name}`, or take it out of `after`",
                    )
    for step in facts.steps:
        for after in step.after:
            if after not in found:
                hint = suggestion(after, facts.tree.steps, "name a step of this tree")
                why = "nobody can tell what must come first"
                yield RULE.finding(after.at, f"there is no step `{after}`", why, hint)
