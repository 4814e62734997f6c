"""A hand-over to a tree, or to a step of a tree, that does not exist; also a tree that is named as
the one that replaces a retired tree.

Why: The page would offer a way on that ends in nothing.

Wrong:

    answers:
      check: Unit answers the scan tool
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: network/unit-slient}

Right:

    answers:
      check: Unit answers the scan tool
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: network/unit-silent}

Mend: Write the tree as `system/tree`, and a step in it as `system/tree#step`.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.model.routes import exits
from builder.model.tree import Branch
from builder.rules.names import offer
from builder.rules.rule import Facts, Rule

RULE = Rule(
    name="no-such-tree",
    family="flow",
    severity=Severity.ERROR,
    summary="A hand-over to a tree or a step that does not exist.",
)
WHY = "whoever is sent there finds nothing"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every tree named that is not there; of a retired one, its successor."""
    tree, known = facts.tree, facts.library.trees
    if tree.replaced_by and tree.replaced_by not in known:
        hint = offer(tree.replaced_by, known, "write the tree as `system/tree`")
        yield RULE.finding(tree.replaced_by.at, f"there is no tree `{tree.replaced_by}`", WHY, hint)
    if tree.status == "retired":
        return
    for step in facts.steps:
        for way in exits(step):
            yield from _hand_over(facts, way.branch)


def _hand_over(facts: Facts, branch: Branch) -> Iterator[Finding]:
    if not branch.tree:
        return
    there = facts.library.trees.get(branch.tree)
    if there is None:
        hint = offer(branch.tree, facts.library.trees, "write the tree as `system/tree`")
        yield RULE.finding(branch.text.at, f"there is no tree `{branch.tree}`", WHY, hint)
    elif branch.step and branch.step not in there.steps:
        hint = offer(branch.step, there.steps, f"name a step of `{branch.tree}`, or leave it out")
        message = f"the tree `{branch.tree}` has no step `{branch.step}`"
        yield RULE.finding(branch.text.at, message, WHY, hint)
