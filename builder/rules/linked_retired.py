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

from builder.model.finding import Finding, Severity
from builder.model.library import Library, handoffs_to
from builder.model.tree import Status
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="linked-retired",
    family=Family.UPKEEP,
    severity=Severity.WARNING,
    summary="A handoff to a tree that is retired.",
)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every handoff to a retired tree, with what replaced it."""
    for tree in library.listings.values():
        for handoff in handoffs_to(library, tree.id) if tree.status is Status.RETIRED else ():
            successor = tree.replaced_by
            yield RULE.finding(
                handoff.at,
                f"`{tree.id}` is retired",
                "its page only points elsewhere and costs a search in the middle of a job",
                f"hand off to `{successor}`" if successor else "hand off to a tree in use",
            )
