"""Lines with `<<<<<<<`, `=======` and `>>>>>>>`, which a merge left in the file: two people changed
the same lines, and nobody has chosen yet.

Why: Both versions stand in the file, and a tech would get both, or neither.

Wrong:

    belt:
      check: Is the belt tight and dry?
    <<<<<<< HEAD
      minutes: 3
    =======
      minutes: 5
    >>>>>>> new-minutes
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    belt:
      check: Is the belt tight and dry?
      minutes: 3
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
