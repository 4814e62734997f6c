"""A value that isn't one of those allowed there.

Why: Nobody can tell what it means, and the step drops out of every calculation.

Wrong:

    all-good:
      stop: No fault found today
      kind: not found

Right:

    all-good:
      stop: No fault found today
      kind: not-found

Fix: Write one of the values that the finding suggests.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="bad-value",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A value that isn't allowed there.",
)
