"""A file larger than 1 MiB.

Why: Nobody can review or follow a file of that size.

Wrong:

    # trees/charging/lamp-on.yml holds 40,000 lines

Right:

    # trees/charging/lamp-on.yml holds 400 lines

Fix: Split it into several trees that hand off to each other.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="size",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A file larger than 1 MiB.",
)
