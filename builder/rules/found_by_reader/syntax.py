"""Text that isn't YAML: a colon inside a phrase, an open bracket or quote, a line in the wrong
column.

Why: The file can't be read from there on, so nothing in it can be relied on.

Wrong:

    belt:
      check: Belt: is it tight and dry?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    belt:
      check: "Belt: is it tight and dry?"
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Put a phrase with a colon in quotes; close brackets and quotes; start items of one list in the
same column.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="syntax",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="Text that isn't YAML.",
)
