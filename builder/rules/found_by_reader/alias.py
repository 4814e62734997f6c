"""An anchor `&` or an alias `*`: YAML puts text from somewhere else in its place.

Why: A step that borrows from somewhere else can't be read, printed or reviewed on its own.

Wrong:

    belt:
      check: Is the belt tight and dry?
      results: &both
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    belt:
      check: Is the belt tight and dry?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Write the text out. Where `&` or `*` begins a phrase, put the phrase in quotes.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="alias",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="An anchor or an alias.",
)
