"""A tab.

Why: A tab is as wide as each editor likes, so nobody sees what belongs to what.

Wrong:

    belt:
      check:	Belt tight and dry
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    belt:
      check: Belt tight and dry
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Use blanks, two for each level.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="tab",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A tab.",
)
