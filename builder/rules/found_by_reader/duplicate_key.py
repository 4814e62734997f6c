"""The same key twice in one map.

Why: Only one of the two would count, and nobody would notice which.

Wrong:

    belt:
      check: Is the belt tight and dry?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}
      check: Does the belt look good?

Right:

    belt:
      check: Is the belt tight and dry?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Give one of them another name, or merge the two.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="duplicate-key",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="The same key twice in one map.",
)
