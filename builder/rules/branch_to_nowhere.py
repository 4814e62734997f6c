"""A branch to a step that is not in the tree, a method borrowed from one, `next` without a list, or
`back` where no action stands.

Why: The page and the print would send people to a step that does not exist.

Wrong:

    lamp:
      check: Lamp lights
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repiar}

Right:

    lamp:
      check: Lamp lights
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Write the step's name as it stands under `steps`; another tree is written `system/tree`.
"""

from collections.abc import Iterator

from builder.graph.routes import Exit, ExitKind, list_step
from builder.model.finding import Finding, Severity
from builder.model.text import Text
from builder.model.tree import Step
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.suggestions import closest_names, suggestion

RULE = Rule(
    name="branch-to-nowhere",
    family=Family.FLOW,
    severity=Severity.ERROR,
    summary="A branch to a step that does not exist.",
)
WHY = "whoever is sent there finds nothing"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every name of a step that is no step."""
    for step, way in facts.exits:
        yield from _branch(facts, step, way)
    for step in facts.steps:
        if step.same_as and step.same_as not in facts.tree.steps:
            yield _no_step(facts, step.same_as)


def _branch(facts: Facts, step: Step, way: Exit) -> Iterator[Finding]:
    branch = way.branch
    if branch.next_item:
        if not list_step(facts.tree, step):
            yield RULE.finding(branch.text.at, "`next` goes on with a list, and no step has one",
                               WHY, "name the step, or give the step above `each:`")  # fmt: skip
    elif branch.back:
        if way.kind is not ExitKind.BACK:
            yield RULE.finding(branch.text.at, "`back` belongs to the `then` of an action",
                               WHY, "name the step")  # fmt: skip
    elif not branch.tree and branch.step not in facts.tree.steps:
        yield _no_step(facts, branch.text)


def _no_step(facts: Facts, name: Text) -> Finding:
    if not facts.tree.twice or closest_names(name, facts.tree.steps):
        hint = suggestion(name, facts.tree.steps, f"add a step `{name}`, or name one that is there")
    else:
        twice = " and ".join(f"`{one}`" for one in sorted(facts.tree.twice))
        stands = "stands" if len(facts.tree.twice) == 1 else "stand"
        hint = f"{twice} {stands} twice: one of the two may be meant to be `{name}`"
    return RULE.finding(name.at, f"there is no step `{name}`", WHY, hint)
