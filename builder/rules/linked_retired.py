"""A handoff to a tree that is retired.

Why: Its page only points to what replaced it, and costs the tech a search in the middle of a job.

Wrong:

    # trees/charging/first.yml
    steps:
      lamp:
        check: Does the light come on?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: charging/old}
    # trees/charging/old.yml
    status: retired
    replaced_by: network/unit-silent
    steps:
      fuse:
        check: Is the fuse good?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Right:

    # trees/charging/first.yml
    steps:
      lamp:
        check: Does the light come on?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: network/unit-silent}
    # trees/charging/old.yml
    status: retired
    replaced_by: network/unit-silent
    steps:
      fuse:
        check: Is the fuse good?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Hand off to the tree that replaced it.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.finding import Finding, Related, Severity
from builder.model.library import Library, handoffs_to
from builder.model.summary import Handoff
from builder.model.tree import Status
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="linked-retired",
    family=Family.UPKEEP,
    severity=Severity.WARNING,
    summary="A handoff to a tree that is retired.",
)
SHOWN = 2  # of the handoffs


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every handoff to a retired tree; one at a tree that nothing replaced."""
    for tree in library.listings.values():
        handoffs = [*handoffs_to(library, tree.id)] if tree.status is Status.RETIRED else []
        if handoffs and not tree.replaced_by:
            yield _not_replaced(library, tree.id, handoffs)
        for handoff in handoffs if tree.replaced_by else ():
            yield RULE.finding(
                handoff.at,
                f"`{tree.id}` is retired",
                "its page only points elsewhere and costs a search in the middle of a job",
                f"hand off to `{tree.replaced_by}`",
            )


def _not_replaced(library: Library, id_: str, handoffs: list[Handoff]) -> Finding:
    many = "a handoff leads" if len(handoffs) == 1 else f"{len(handoffs)} handoffs lead"
    return RULE.finding(
        library.trees[id_].at,
        f"`{id_}` is retired, nothing replaced it, and {many} to it",
        "the tech comes to an empty page in the middle of a job",
        "add `replaced_by: system/tree`, or write `status: ready` again",
        *(Related(one.at, f"`{one.from_tree}` hands off to it") for one in handoffs[:SHOWN]),
    )
