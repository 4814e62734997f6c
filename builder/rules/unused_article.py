"""A how-to article that no step and no other article leads to.

Why: Somebody took an evening to write it, and nobody will ever read it in the bay.

Wrong:

    # kb/how-to/air-gap.md
    ---
    title: Air gap of a sensor
    purpose: Finds a sensor that sits too far away
    reviewed: {by: M. Lind, date: 2026-09-01}
    ---
    Brass feeler, ring turned to its nearest tooth.

Right:

    # kb/how-to/air-gap.md
    ---
    title: Air gap of a sensor
    purpose: Finds a sensor that sits too far away
    reviewed: {by: M. Lind, date: 2026-09-01}
    ---
    Brass feeler, ring turned to its nearest tooth.
    # trees/charging/case.yml
    steps:
      gap:
        check: Air gap within a feeler
        how_to: air-gap
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Name it in `how_to` of the step that it explains, or delete it.
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
    if not library.whole:
        return  # a step with a mistake of text may be the one that leads to it
    used = {name for listing in library.listings.values() for name in listing.how_tos}
    for article in library.how_tos.values():
        used.update(one.article for one in links_in(article) if one.article not in ("", article.id))
    for name in used - library.how_tos.keys():
        used = {*used, *get_close_matches(name, library.how_tos, n=1)}  # misspelt, told elsewhere
    for article in library.how_tos.values():
        if article.id not in used:
            yield RULE.finding(
                article.at,
                f"nothing leads to the article `{article.id}`",
                "nobody will come to it in the bay",
                f"add `how_to: {article.id}` to the step that it explains, or delete it",
            )
