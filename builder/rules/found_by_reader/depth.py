"""Brackets, lists or indentation deeper than any text needs.

Why: No tree needs more than twenty levels, no article more than eight; a bracket has been left open
somewhere above.

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

Mend: Close the brackets, or write on separate lines.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Rule

RULE = Rule(
    name="depth",
    family="text",
    severity=Severity.ERROR,
    summary="More levels inside each other than any text needs.",
)
