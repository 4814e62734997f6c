"""A second document in one file, after a line `---`.

Why: Only one of the two would count, and nobody would notice which.

Wrong:

    # trees/charging/lamp-on.yml
    steps:
      belt:
        check: Is the belt tight and dry?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}
    ---
    steps:
      belt:
        check: Is the belt tight and dry?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Right:

    # trees/charging/lamp-on.yml
    steps:
      belt:
        check: Is the belt tight and dry?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Write one tree per file; delete the line `---` or `...`.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="documents",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A second document in one file.",
)
