"""A tag, a word that begins with `!`.

Why: The format has no tags; YAML would turn the text into something else.

Wrong:

    belt:
      check: !important Is the belt tight and dry?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    belt:
      check: Is the belt tight and dry?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Delete it. Where `!` begins a phrase, put the phrase in quotes.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="tag",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A tag.",
)
