"""A file that is a link leading out of the shop, or to nothing.

Why: A file outside the shop isn't under its version control, and a reviewer never sees it change. A
file that is missing can't be read at all.

Wrong:

    # trees/charging/lamp-on.yml is a link to ../../../elsewhere/lamp-on.yml

Right:

    # trees/charging/lamp-on.yml is a file of its own

Fix: Put the file itself there.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="link",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A file that is a link leading out of the shop, or to nothing.",
)
