"""Brackets, lists or indentation deeper than any text needs.

Why: No tree needs more than twenty levels, and no article more than eight: a bracket above was
left open.

Wrong:

    belt:
      check: Is the belt tight and dry?
      tools: [[[[[[[[[[[[[[[[[[[[[[multimeter]]]]]]]]]]]]]]]]]]]]]]

Right:

    belt:
      check: Is the belt tight and dry?
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
    summary="More nested levels than any text needs.",
)
