"""A hand-over to a tree, or to a step of a tree, that does not exist; also the tree that replaces a
retired one, and the tree of a closed job.

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
from datetime import date

from builder.model.finding import Finding, Severity
from builder.model.library import Library
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


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every closed job whose tree is not there."""
    for case in library.cases.values():
        if case.tree not in library.trees:
            hint = offer(case.tree, library.trees, "write the tree as `system/tree`")
            why = "the job cannot be counted for the weights of any tree"
            yield RULE.finding(case.tree.at, f"there is no tree `{case.tree}`", why, hint)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every tree named that is not there; of a retired one, its successor."""
    tree, known = facts.tree, facts.library.trees
    if tree.replaced_by and tree.replaced_by not in known:
        hint = offer(tree.replaced_by, known, "write the tree as `system/tree`")
        yield RULE.finding(tree.replaced_by.at, f"there is no tree `{tree.replaced_by}`", WHY, hint)
    if tree.status == "retired":
        return
    for _, way in facts.ways:
        yield from _hand_over(facts, way.branch)


def _hand_over(facts: Facts, branch: Branch) -> Iterator[Finding]:
    if not branch.tree:
        return
    there = facts.library.trees.get(branch.tree)
    if there is None:
        plain = "write the tree as `system/tree`, or a step of this tree without a `/`"
        hint = offer(branch.tree, facts.library.trees, plain)
        yield RULE.finding(branch.text.at, f"there is no tree `{branch.tree}`", WHY, hint)
    elif branch.step and branch.step not in there.steps:
        hint = offer(branch.step, there.steps, f"name a step of `{branch.tree}`, or leave it out")
        message = f"the tree `{branch.tree}` has no step `{branch.step}`"
        yield RULE.finding(branch.text.at, message, WHY, hint)
