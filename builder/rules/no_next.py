"""A step that goes through a list, and no way that leads on to the next item.

Why: The first item is tested, and the fault in the second one is never seen.

Wrong:

    lists:
      circuits: [radio, cluster]
    steps:
      circuit:
        check: Does current flow in the fuse of the <circuit>?
        each: {circuit: circuits}
        spent: all-good
        results: {yes: repair, no: all-good}

Right:

    lists:
      circuits: [radio, cluster]
    steps:
      circuit:
        check: Does current flow in the fuse of the <circuit>?
        each: {circuit: circuits}
        spent: all-good
        results: {yes: repair, no: next}

Fix: Write `next` at the result after which the next item is tested; it goes to `spent` after the
last one.
"""

from collections.abc import Iterator

from builder.graph.routes import ExitKind, list_step
from builder.model.checks import Check
from builder.model.finding import Finding, Severity
from builder.model.tree import Step
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="no-next",
    family=Family.FLOW,
    severity=Severity.ERROR,
    summary="A list of which only the first item is ever reached.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every list that no `next` continues."""
    if not facts.whole:
        return
    going_on = {
        list_step(facts.tree, step) for step, exit_ in facts.exits if exit_.kind is ExitKind.NEXT
    }
    for step in facts.steps:
        if step.each and step.id not in going_on:
            name, items = step.each
            many = len(facts.tree.lists.get(str(items), ()))
            of = f"the {many} `{items}`" if many else f"`{items}`"
            yield RULE.finding(
                name.at,
                f"no result leads on to `next`, so only the first of {of} is reached",
                "a fault in one of the others is never seen",
                _hint(step),
            )


def _hint(step: Step) -> str:
    spent = str(step.spent.text) if step.spent else ""
    ways = step.body.results if isinstance(step.body, Check) else ()
    same = next((one for one in ways if str(one.branch.text) == spent), None)
    if same:
        return f"write `{same.text}: next`: after the last item it goes to `{spent}`"
    return "write `next` as the branch of the result after which the next one is tested"
