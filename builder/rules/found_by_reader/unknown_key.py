"""A key that the format does not know, often a slip of the keys.

Why: What stands under it would be passed over without a word.

Wrong:

    belt:
      check: Belt tight and dry
      tool: [multimeter]
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

Fix: Write the key that the finding offers.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="unknown-key",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A key that the format does not know.",
)
