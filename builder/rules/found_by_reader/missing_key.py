"""A required key that isn't there.

Why: The tech finds nothing where it belongs.

Wrong:

    repair:
      fix: Replace the belt
      weight: 1
      verify: [charging voltage is OK]

Right:

    repair:
      fix: Replace the belt
      cause: The belt slips
      weight: 1
      verify: [charging voltage is OK]

Fix: Add the key that the finding names.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="missing-key",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A required key that isn't there.",
)
