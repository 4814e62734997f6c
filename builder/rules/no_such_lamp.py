"""A warning lamp that is not in the list of lamps.

Why: An apprentice who searches by the lamp would not find the tree.

Wrong:

    symptom: {words: [battery light on], lamps: [chargeing]}
    steps:
      belt:
        check: Belt tight and dry
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Right:

    symptom: {words: [battery light on], lamps: [charging]}
    steps:
      belt:
        check: Belt tight and dry
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Write the lamp as `kb/lamps.yml` has it, or add it there.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.suggestions import unknown_names

RULE = Rule(
    name="no-such-lamp",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A warning lamp that is not in the list of lamps.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every lamp that is not known."""
    why = "whoever searches by the lamp would not find this tree"
    yield from unknown_names(
        RULE, facts.tree.symptom.lamps, facts.library.lamps, why, "kb/lamps.yml"
    )
