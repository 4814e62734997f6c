"""The same key twice in one map.

Why: Only one of the two would count, and nobody would see which.

Wrong:

    belt:
      check: Belt tight and dry
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}
      check: Belt looks good

Right:

    belt:
      check: Belt tight and dry
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Give one of them another name, or put both together.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="duplicate-key",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="The same key twice in one map.",
)
