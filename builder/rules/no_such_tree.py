"""A handoff to a tree, or to a step of a tree, that doesn't exist; also the tree that replaces a
retired one, and the tree of a closed job.

Why: The tech taps the link and the job stops there.

Wrong:

    answers:
      check: Does the module respond?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: network/unit-slient}

Right:

    answers:
      check: Does the module respond?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: network/unit-silent}

Fix: Write the tree as `system/tree`, and a step in it as `system/tree#step`.
"""

from collections.abc import Iterator, Sequence
from datetime import date

from builder.model.finding import Finding, Severity, edit_of
from builder.model.library import Library, handoffs_to
from builder.model.summary import Handoff, TreeListing
from builder.model.text import NOWHERE, Text
from builder.rules.shared.close_names import (
    MOST_OFFERED,
    closest_names,
    mistyped,
    slip_edit,
    step_meant,
    suggestion,
)
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="no-such-tree",
    family=Family.FLOW,
    severity=Severity.ERROR,
    summary="A handoff to a tree or a step that doesn't exist.",
)
WHY = "this handoff goes nowhere"


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every tree, or step of another tree, that doesn't exist."""
    known = library.trees.keys() | library.unread_trees
    for listing in library.listings.values():
        if listing.replaced_by and listing.replaced_by not in known:
            successor = library.trees[listing.id].replaced_by
            at = successor.at if successor else NOWHERE
            yield _no_tree(library, Text(listing.replaced_by, at), listing.id)
    for id_, callers in library.callers.items():
        tree = library.listings.get(id_)
        if id_ not in library.unread_trees and (
            not tree or not {step for _, step in callers if step} <= {*tree.steps}
        ):
            for handoff in handoffs_to(library, id_):
                yield from _handoff(library, handoff)
    for case in library.cases.values():
        if case.tree not in known:
            hint = suggestion(case.tree, library.trees, "write the tree as `system/tree`")
            why = "the job doesn't count toward any tree's weights"
            yield RULE.finding(case.tree.at, f"tree `{case.tree}` doesn't exist", why, hint,
                               edit=slip_edit(case.tree, library.trees))  # fmt: skip
        elif case.fix:
            yield from _fix_of_case(case.fix, library.listings.get(str(case.fix_in or case.tree)))


def _fix_of_case(fix: Text, tree: TreeListing | None) -> Iterator[Finding]:
    if tree is None or fix in tree.steps:
        return
    hint = suggestion(fix, tree.steps, "name the step that repaired it")
    yield RULE.finding(fix.at, f"tree `{tree.id}` has no step `{fix}`",
                       "the job doesn't count toward any fix's weight", hint)  # fmt: skip


def _handoff(library: Library, handoff: Handoff) -> Iterator[Finding]:
    tree, step = library.listings.get(handoff.tree), handoff.step
    if tree is None:
        steps = _led_to_by_none(library, handoff.from_tree)
        yield _no_tree(library, _branch(handoff), handoff.from_tree, steps)
    elif step and step not in tree.steps:
        hint = suggestion(step, tree.steps, f"use a step of `{tree.id}`, or delete `#{step}`")
        meant = mistyped(step, tree.steps)
        edit = edit_of(_branch(handoff), f"{tree.id}#{meant}") if meant else None
        yield RULE.finding(handoff.at, f"tree `{tree.id}` has no step `{step}`", WHY, hint,
                           edit=edit)  # fmt: skip


def _branch(handoff: Handoff) -> Text:
    """Return the branch as written: `tree#step` is one text."""
    return Text("#".join(filter(None, (handoff.tree, handoff.step))), handoff.at)


def _led_to_by_none(library: Library, tree: str) -> list[str]:
    entered = {step for _, step in library.callers.get(tree, ())}
    summary = library.trees.get(tree)
    return [step for step in summary.led_to_by_none if step not in entered] if summary else []


def _no_tree(library: Library, branch: Text, own: str, steps: Sequence[str] = ()) -> Finding:
    """Return the finding for a tree that doesn't exist, written in the tree `own`.

    Never `own` is offered; where no name is close, one of `steps`, which nothing leads to yet.
    """
    name, mark, step = branch.partition("#")
    forms = "write a tree as `system/tree`, or a step of this tree without a `/`"
    others = [id_ for id_ in library.trees if id_ != own]
    close = closest_names(name, others)
    of_system = [id_ for id_ in others if id_.startswith(f"{name.partition('/')[0]}/")]
    named = [id_ for id_ in others if id_.endswith(f"/{name}")]  # the system is left out
    hint = suggestion(name, others, forms)
    if of_system and not close:
        hint = f"did you mean {' or '.join(f'`{id_}`' for id_ in of_system[:MOST_OFFERED])}?"
    if steps and not close:
        hint = step_meant(steps)
    if named:
        hint = f"write {' or '.join(f'`{id_}{mark}{step}`' for id_ in named)}"
    meant = named[0] if len(named) == 1 else mistyped(name, others)
    edit = edit_of(branch, f"{meant}{mark}{step}") if meant else None
    return RULE.finding(branch.at, f"tree `{name}` doesn't exist", WHY, hint, edit=edit)
