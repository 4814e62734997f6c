"""A second document in one file, begun by a line `---`.

Why: Only one of the two would be read, and nobody would see which.

Wrong:

    # trees/charging/lamp-on.yml
    steps:
      belt:
        check: Belt tight and dry
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}
    ---
    steps:
      belt:
        check: Belt tight and dry
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Right:

    # trees/charging/lamp-on.yml
    steps:
      belt:
        check: Belt tight and dry
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Write one tree a file; delete the line `---` or `...`.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="documents",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A second document in one file.",
)
