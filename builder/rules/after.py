"""A step that a path reaches without the step its `after` names.

Why: The author knew that the order matters. On this path the reading means nothing, or someone gets
hurt.

Wrong:

    key:
      check: Has the key been off for 5 min?
      results:
        - {result: yes, branch: measure}
        - {result: no, branch: sleep}
    sleep:
      action: Turn the key off and wait 5 min
      then: measure
    measure:
      check: Are both wires quiet?
      after: [sleep]
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    sleep:
      action: Turn the key off and wait 5 min
      then: measure
    measure:
      check: Are both wires quiet?
      after: [sleep]
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Lead every path through the step that must come first, or take it out of `after`.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.rules.shared.close_names import slip_edit, suggestion
from builder.rules.shared.order import path_as_text, reached_steps, without_step
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="after",
    family=Family.ORDER,
    severity=Severity.ERROR,
    summary="A step is reached before the step that must come first.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every step that a path reaches without a step it names."""
    names = {str(name): None for step in facts.steps for name in step.after}
    without = {name: without_step(facts, name) for name in names if name in facts.tree.steps}
    for name, reached in without.items():
        for step, place in reached_steps(reached, facts):
            for after in step.after:
                if after == name:
                    yield RULE.finding(
                        after.at,
                        f"`{step.id}` can be reached without `{name}`: "
                        f"{path_as_text(reached, place)}",
                        "on this path the step means nothing, or someone gets hurt",
                        f"lead this path through `{name}`, or take it out of `after`",
                    )
    for step in facts.steps:
        for after in step.after:
            if after not in without:
                hint = suggestion(after, facts.tree.steps, "use a step of this tree")
                why = "nobody can tell what must come first"
                edit = slip_edit(after, facts.tree.steps)
                yield RULE.finding(after.at, f"step `{after}` doesn't exist", why, hint, edit=edit)
