"""A value that is none of those that can stand there.

Why: Nobody can tell what was meant, and the step is left out of everything that is computed.

Wrong:

    all-good:
      stop: Nothing is wrong today
      kind: not found

Right:

    all-good:
      stop: Nothing is wrong today
      kind: not-found

Fix: Write one of the values that the finding offers.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="bad-value",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A value that cannot stand there.",
)
