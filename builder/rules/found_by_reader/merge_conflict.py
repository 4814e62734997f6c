"""Lines with `<<<<<<<`, `=======` and `>>>>>>>`, which a merge left in the file: two people changed
the same lines, and nobody has chosen yet.

Why: Both versions stand in the file, and a tech would get both, or neither.

Wrong:

    # trees/charging/lamp-on.yml
    steps:
      belt:
    <<<<<<< HEAD
        check: Is the belt tight?
    =======
        check: Is the belt tight and dry?
    >>>>>>> dry-belt
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

Fix: Keep one version of the lines, and delete the other one and the three marked lines.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="merge-conflict",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="Two versions of the same lines, left by a merge.",
)
