"""Something that has to be there and is not.

Why: Whoever follows the tree would find nothing where it belongs.

Wrong:

    repair:
      fix: Replace the belt
      weight: 1
      verify: [measured again]

Right:

    repair:
      fix: Replace the belt
      cause: The belt slips
      weight: 1
      verify: [measured again]

Fix: Add the key that the finding names.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="missing-key",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="Something that has to be there and is not.",
)
