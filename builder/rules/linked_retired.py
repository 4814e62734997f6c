"""A hand-over to a tree that is retired.

Why: Its page only points to what replaced it, and costs the technician a search in mid-job.

Wrong:

    # trees/charging/first.yml
    steps:
      lamp:
        check: Lamp lights
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: charging/old}
    # trees/charging/old.yml
    status: retired
    replaced_by: network/unit-silent
    steps:
      fuse:
        check: Fuse whole
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Right:

    # trees/charging/first.yml
    steps:
      lamp:
        check: Lamp lights
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: network/unit-silent}
    # trees/charging/old.yml
    status: retired
    replaced_by: network/unit-silent
    steps:
      fuse:
        check: Fuse whole
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Hand over to the tree that replaced it.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.finding import Finding, Severity
from builder.model.library import Library, hand_overs_to
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="linked-retired",
    family=Family.UPKEEP,
    severity=Severity.WARNING,
    summary="A hand-over to a tree that is retired.",
)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every hand-over to a retired tree, with what replaced it."""
    for there in library.listings.values():
        for over in hand_overs_to(library, there.id) if there.status == "retired" else ():
            new = there.replaced_by
            yield RULE.finding(
                over.at,
                f"`{there.id}` is retired",
                "its page only points elsewhere, and costs a search in mid-job",
                f"hand over to `{new}`" if new else "hand over to a tree that is in use",
            )
