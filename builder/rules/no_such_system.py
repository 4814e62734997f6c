"""A system that isn't in the list of systems.

Why: The tree is missing from its system's page.

Wrong:

    # trees/charging/lamp-on.yml
    system: chargin
    steps:
      belt:
        check: Is the belt tight and dry?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Right:

    # trees/charging/lamp-on.yml
    system: charging
    steps:
      belt:
        check: Is the belt tight and dry?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Write the system as it is in `kb/systems.yml`, or add it there.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.rules.shared.close_names import unknown_names
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="no-such-system",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A system that isn't in the list of systems.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding where the tree's system doesn't exist."""
    why = "the tree is missing from its system's page"
    yield from unknown_names(RULE, filter(None, [facts.tree.system]), facts.library, why)
