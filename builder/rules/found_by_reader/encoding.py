r"""A file that is not UTF-8, or a sign that cannot be seen.

Why: Signs such as ° and Ω would come out wrong on the page and on the print.

Wrong:

    # Saved by an old editor as Windows-1252: the sign of degrees comes out wrong.
    belt:
      check: Belt at 20 \xb0C tight and dry

Right:

    belt:
      check: Belt at 20 °C tight and dry
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
    summary="A file that is not UTF-8.",
)
