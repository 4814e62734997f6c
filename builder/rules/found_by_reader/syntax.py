"""Text that is not YAML: a colon inside a phrase, an open bracket or quote, a line in the wrong
column.

Why: The tree cannot be read from there on, so nothing in it can be relied on.

Wrong:

    belt:
      check: Belt: tight and dry
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    belt:
      check: "Belt: tight and dry"
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Put a phrase that holds a colon in quotes; close brackets and quotes; let neighbours begin in
one column.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="syntax",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="Text that is not YAML.",
)
