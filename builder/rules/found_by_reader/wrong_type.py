"""A list where words are wanted, words where a number is wanted, and the like.

Why: It cannot be understood as it stands.

Wrong:

    belt:
      check: Belt tight and dry
      tools: multimeter
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    belt:
      check: Belt tight and dry
      tools: [multimeter]
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Write it as the example in the finding shows.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="wrong-type",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A value of the wrong kind.",
)
