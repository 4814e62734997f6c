"""A ready tree that hands over to a draft.

Why: A draft is half written; whoever is handed over to it is left alone in the middle.

Wrong:

    # trees/charging/first.yml
    steps:
      lamp:
        check: Lamp lights
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: charging/second}
    # trees/charging/second.yml
    status: draft
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
          - {result: no, branch: charging/second}
    # trees/charging/second.yml
    status: ready
    steps:
      fuse:
        check: Fuse whole
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Finish the draft and have it reviewed, or end here with a stop until it is.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.finding import Finding, Severity
from builder.model.library import Library, hand_overs_to
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="linked-draft",
    family=Family.UPKEEP,
    severity=Severity.WARNING,
    summary="A ready tree that hands over to a draft.",
)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every hand-over of a ready tree to a draft."""
    drafts = [listing.id for listing in library.listings.values() if listing.status == "draft"]
    for over in (over for id_ in drafts for over in hand_overs_to(library, id_)):
        if library.listings[over.from_tree].status == "ready":
            yield RULE.finding(
                over.at,
                f"`{over.tree}` is a draft",
                "whoever is handed over to it is left alone in the middle",
                "finish it and have it reviewed, or end here with a stop",
            )
