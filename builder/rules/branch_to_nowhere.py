"""A branch to a step that doesn't exist, a `same_as` that names no step, `next` without a list, or
`back` in the first step, or anywhere but in the `then` of an action.

Why: The page and the print would send a tech to a step that isn't there.

Wrong:

    lamp:
      check: Does the light come on?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repiar}

Right:

    lamp:
      check: Does the light come on?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Write the step's name as it is under `steps`. Another tree is `system/tree`.
"""

from collections.abc import Iterator

from builder.graph.moves import leads_nowhere
from builder.graph.routes import Exit, ExitKind
from builder.model.finding import Finding, Severity
from builder.model.text import Text
from builder.model.tree import Step
from builder.rules.shared.close_names import closest_names, slip_edit, step_meant, suggestion
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.unreached import first_unreached

RULE = Rule(
    name="branch-to-nowhere",
    family=Family.FLOW,
    severity=Severity.ERROR,
    summary="A branch to a step that doesn't exist.",
)
WHY = "this branch goes nowhere"
YES_OR_NO = ("yes", "no", "true", "false")


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every branch and `same_as` that names no step."""
    for step, exit_ in facts.exits:
        yield from _branch(facts, step, exit_)
    for step in facts.steps:
        if step.same_as and step.same_as not in facts.tree.steps:
            yield _no_step(facts, step.same_as, "the method this step borrows isn't there")


def _branch(facts: Facts, step: Step, exit_: Exit) -> Iterator[Finding]:
    branch = exit_.branch
    if not leads_nowhere(facts.tree, step, exit_):
        return
    if not branch.next_item and not branch.back:
        yield _no_step(facts, branch.text, WHY)
        return
    hint = "write the name of the next step"
    message = f"`back` in the first step: no step has led to `{step.id}` yet"
    if branch.next_item:
        message = "`next` needs a list, and no step above has one"
        hint = "write a step's name, or add `each:` to a step above"
    elif exit_.kind is not ExitKind.BACK:
        message, hint = "`back` works only in the `then` of an action", "write the step's name"
    yield RULE.finding(branch.text.at, message, WHY, hint)


def _no_step(facts: Facts, name: Text, why: str) -> Finding:
    if not facts.tree.defined_twice or closest_names(name, facts.tree.steps):
        other = "write the name of a step" if name in YES_OR_NO else (
            f"add a step `{name}`, or use one of this tree; a step of another tree is "
            f"`system/tree#{name}`")  # fmt: skip
        unreached = first_unreached(facts)
        hint = (
            step_meant(unreached) if unreached and not closest_names(name, facts.tree.steps)
            else suggestion(name, facts.tree.steps, other)
        )  # fmt: skip
    else:
        twice = " and ".join(f"`{repeated}`" for repeated in sorted(facts.tree.defined_twice))
        is_or_are = "is" if len(facts.tree.defined_twice) == 1 else "are"
        hint = f"{twice} {is_or_are} defined twice: was one meant to be `{name}`?"
    edit = slip_edit(name, facts.tree.steps)
    procedure = facts.library.procedures.get(facts.tree.id.removeprefix("procedures/"))
    if facts.tree.is_procedure and procedure and name in procedure.returns:
        hint, edit = f"a procedure ends with its word: write `return: {name}`", None
    return RULE.finding(name.at, f"step `{name}` doesn't exist", why, hint, edit=edit)
