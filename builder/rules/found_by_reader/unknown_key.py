"""A key that the format doesn't have, often a typo.

Why: Everything under it would be ignored.

Wrong:

    belt:
      check: Is the belt tight and dry?
      tool: [multimeter]
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

Fix: Write the key that the finding suggests.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="unknown-key",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A key that the format doesn't have.",
)
