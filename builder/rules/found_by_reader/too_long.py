"""A text that does not fit its box on the chart. Beyond three times the length it is an error.

Why: On the wall the whole chart has to be set smaller, and nobody can read it from the bay.

Wrong:

    belt:
      check: Belt tight and dry, without cracks, and turning the pulley of the alternator with it
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    belt:
      check: Belt tight and dry
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Say it shorter, and put the rest into `note` or into an article.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="too-long",
    family=Family.TEXT,
    severity=Severity.WARNING,
    summary="A text that does not fit its box on the chart.",
)
