"""A list in place of words, words in place of a number, and the like.

Why: The builder can't tell what it means.

Wrong:

    belt:
      check: Is the belt tight and dry?
      tools: multimeter
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    belt:
      check: Is the belt tight and dry?
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
    summary="A value of the wrong type.",
)
