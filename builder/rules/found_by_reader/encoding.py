r"""A file that isn't UTF-8, or a character that can't be seen.

Why: Characters such as ° and Ω would come out wrong on the page and on the print.

Wrong:

    # Saved by an old editor as Windows-1252: the degree sign would come out wrong.
    belt:
      check: Is the belt tight at 20 \xb0C?

Right:

    belt:
      check: Is the belt tight at 20 °C?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Save the file as UTF-8.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="encoding",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A file that isn't UTF-8.",
)
