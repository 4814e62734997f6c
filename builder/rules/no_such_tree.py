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

Fix: Write the tree as `system/tree`, and a step in it as `system/tree#step`.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.finding import Finding, Severity
from builder.model.library import Library, hand_overs_to
from builder.model.summary import HandOver
from builder.model.text import NOWHERE, Position
from builder.rules.shared.rule import Family, Rule
from builder.rules.shared.suggestions import suggestion

RULE = Rule(
    name="no-such-tree",
    family=Family.FLOW,
    severity=Severity.ERROR,
    summary="A hand-over to a tree or a step that does not exist.",
)
WHY = "whoever is sent there finds nothing"


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every tree or step of another tree that is named and not there."""
    for listing in library.listings.values():
        if listing.replaced_by and listing.replaced_by not in library.trees:
            new = library.trees[listing.id].replaced_by
            yield _no_tree(library, listing.replaced_by, new.at if new else NOWHERE)
    for id_, callers in library.callers.items():
        there = library.listings.get(id_)
        if not there or not {step for _, step in callers if step} <= {*there.steps}:
            for over in hand_overs_to(library, id_):
                yield from _hand_over(library, over)
    for case in library.cases.values():
        if case.tree not in library.trees:
            hint = suggestion(case.tree, library.trees, "write the tree as `system/tree`")
            why = "the job cannot be counted for the weights of any tree"
            yield RULE.finding(case.tree.at, f"there is no tree `{case.tree}`", why, hint)


def _hand_over(library: Library, over: HandOver) -> Iterator[Finding]:
    there = library.listings.get(over.tree)
    if there is None:
        yield _no_tree(library, over.tree, over.at)
    elif over.step and over.step not in there.steps:
        hint = suggestion(over.step, there.steps, f"name a step of `{over.tree}`, or leave it out")
        yield RULE.finding(over.at, f"the tree `{over.tree}` has no step `{over.step}`", WHY, hint)


def _no_tree(library: Library, name: str, at: Position) -> Finding:
    plain = "write the tree as `system/tree`, or a step of this tree without a `/`"
    hint = suggestion(name, library.trees, plain)
    return RULE.finding(at, f"there is no tree `{name}`", WHY, hint)
