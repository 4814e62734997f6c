"""A tab.

Why: Every editor shows a tab at another width, so nobody can see what belongs to what.

Wrong:

    belt:
      check:	Is the belt tight and dry?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    belt:
      check: Is the belt tight and dry?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Use spaces, two for each level.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="tab",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A tab.",
)
