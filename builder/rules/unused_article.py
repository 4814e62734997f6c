"""A how-to article that no step and no other article links to.

Why: Someone spent an evening writing it, and nobody will ever read it in the bay.

Wrong:

    # kb/how-to/air-gap.md
    ---
    title: Sensor air gap
    purpose: Finds a sensor that is too far away
    reviewed: {by: M. Lind, date: 2026-09-01}
    ---
    Turn the ring to its closest tooth. Use a brass feeler gauge.

Right:

    # kb/how-to/air-gap.md
    ---
    title: Sensor air gap
    purpose: Finds a sensor that is too far away
    reviewed: {by: M. Lind, date: 2026-09-01}
    ---
    Turn the ring to its closest tooth. Use a brass feeler gauge.
    # trees/charging/case.yml
    steps:
      gap:
        check: Is the air gap in spec?
        how_to: air-gap
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Name it in `how_to` of the step that needs it, or delete it.
"""

from collections.abc import Iterator
from datetime import date
from difflib import get_close_matches

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.rules.shared.article_links import links_in
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="unused-article",
    family=Family.KNOWLEDGE,
    severity=Severity.WARNING,
    summary="An article that nothing leads to.",
)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every article that neither a tree nor another article uses."""
    if not library.complete or library.unread_trees:
        return  # a step with a text error, or in a file with a wrong name, may lead to it
    used = {name for listing in library.listings.values() for name in listing.how_tos}
    for procedure in library.procedures.values():
        used |= {str(step.how_to) for step in procedure.tree.steps.values() if step.how_to}
    for article in library.how_tos.values():
        linked = {link.article for link in links_in(article)}
        used |= linked - {"", article.id}
    for name in used - library.how_tos.keys():
        used = {
            *used,
            *get_close_matches(name, library.how_tos, n=1),
        }  # another rule reports the typo
    for article in library.how_tos.values():
        if article.id not in used:
            yield RULE.finding(
                article.at,
                f"nothing links to article `{article.id}`",
                "nobody will ever read it in the bay",
                f"add `how_to: {article.id}` to the step that needs it, or delete it",
            )
