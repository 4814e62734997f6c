"""A file that is a link leading out of the shop, or to nothing.

Why: What lies outside is not under the shop's version control, and a reviewer never sees it change.
What is missing cannot be read by anybody.

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
