"""A ready tree that hands off to a draft.

Why: A draft is half written: the tech who is handed off to it gets stuck in the middle.

Wrong:

    # trees/charging/first.yml
    steps:
      lamp:
        check: Does the light come on?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: charging/second}
    # trees/charging/second.yml
    status: draft
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
          - {result: no, branch: charging/second}
    # trees/charging/second.yml
    status: ready
    steps:
      fuse:
        check: Is the fuse good?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Finish the draft and have it reviewed, or end here with a stop until it is.
"""

from collections.abc import Iterator
from datetime import date
from itertools import chain

from builder.model.finding import Finding, Severity
from builder.model.library import Library, handoffs_to
from builder.model.tree import Status
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="linked-draft",
    family=Family.UPKEEP,
    severity=Severity.WARNING,
    summary="A ready tree that hands off to a draft.",
)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every handoff of a ready tree to a draft."""
    drafts = [listing.id for listing in library.listings.values() if listing.status is Status.DRAFT]
    for handoff in chain.from_iterable(handoffs_to(library, id_) for id_ in drafts):
        if library.listings[handoff.from_tree].status is Status.READY:
            yield RULE.finding(
                handoff.at,
                f"`{handoff.tree}` is a draft",
                "a draft is half written: the tech gets stuck in the middle",
                "finish it and have it reviewed, or end here with a stop",
            )
