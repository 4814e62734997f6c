"""A text that doesn't fit its box on the chart. Beyond three times the limit it's an error.

Why: The whole chart on the wall has to shrink, and nobody can read it from the bay.

Wrong:

    belt:
      check: Is the belt tight, dry, and free of cracks, and does it turn the alternator pulley?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    belt:
      check: Is the belt tight and dry?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Say it in fewer words, and put the rest into `note` or an article.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="too-long",
    family=Family.TEXT,
    severity=Severity.WARNING,
    summary="A text that doesn't fit its box on the chart.",
)
