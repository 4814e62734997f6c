"""A warning light that isn't in the list of lamps.

Why: An apprentice who searches by the light won't find the tree.

Wrong:

    symptom: {words: [battery light on], lamps: [chargeing]}
    steps:
      belt:
        check: Is the belt tight and dry?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Right:

    symptom: {words: [battery light on], lamps: [charging]}
    steps:
      belt:
        check: Is the belt tight and dry?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Write the light as it is in `kb/lamps.yml`, or add it there.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.rules.shared.close_names import unknown_names
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="no-such-lamp",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A warning light that isn't in the list of lamps.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every warning light that doesn't exist."""
    why = "a search by this warning light won't find the tree"
    yield from unknown_names(RULE, facts.tree.symptom.lamps, facts.library, why)
