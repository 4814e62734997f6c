"""Brackets or indentation more than twenty levels deep.

Why: No tree needs that; a bracket has been left open somewhere above.

Wrong:

    belt:
      check: Belt tight and dry
      tools: [[[[[[[[[[[[[[[[[[[[[[multimeter]]]]]]]]]]]]]]]]]]]]]]

Right:

    belt:
      check: Belt tight and dry
      tools: [multimeter]
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Close the brackets, or write on separate lines.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="depth",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="More levels inside each other than any tree needs.",
)
