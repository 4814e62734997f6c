"""A procedure that no step runs and no fix verifies with.

Why: Someone wrote and proved it, and nobody will ever be led to it.

Wrong:

    # kb/procedures/first-stop.yml
    title: First stop in the lot
    returns: [good, not good]
    steps:
      stop:
        check: Does it stop straight and firm?
        results:
          - {result: yes, return: good}
          - {result: no, return: not good}

Right:

    # kb/procedures/first-stop.yml
    title: First stop in the lot
    returns: [good, not good]
    steps:
      stop:
        check: Does it stop straight and firm?
        results:
          - {result: yes, return: good}
          - {result: no, return: not good}
    # trees/charging/case.yml
    steps:
      stop:
        check: Does it stop straight and firm?
        by: first-stop
        results:
          - {result: good, branch: all-good}
          - {result: not good, branch: repair}

Fix: Name it in `by` or in `verify` of a tree that needs it, or delete it.
"""

from collections.abc import Iterator
from datetime import date
from difflib import get_close_matches

from builder.graph.runs import procedures_named
from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="unused-procedure",
    family=Family.PROCEDURES,
    severity=Severity.WARNING,
    summary="A procedure that nothing runs.",
)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every procedure that no tree and no other procedure runs."""
    if not library.complete or library.unread_trees:
        return  # a step with a text error may be the one that runs it
    named = {name for listing in library.listings.values() for name in listing.procedures}
    for procedure in library.procedures.values():
        named |= {*procedures_named(procedure.tree)} - {procedure.name}
    for name in named - library.procedures.keys():  # another rule reports the typo
        named = {*named, *get_close_matches(name, library.procedures, n=1)}
    for procedure in library.procedures.values():
        if procedure.name not in named:
            yield RULE.finding(
                procedure.tree.title.at,
                f"nothing runs `{procedure.name}`",
                "nobody will ever be led to it in the bay",
                f"add `by: {procedure.name}` to the step that needs it, or delete it",
            )
