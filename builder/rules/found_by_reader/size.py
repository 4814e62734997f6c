"""A file, a tree, an article or a paragraph larger than anyone can follow.

Why: Nobody can review or follow a file of more than 1 MiB, a tree of more than 500 steps or an
article of more than 64 KiB, and checking one would take hours.

Wrong:

    # trees/charging/lamp-on.yml holds 40,000 lines

Right:

    # trees/charging/lamp-on.yml holds 400 lines

Fix: Split it into several trees that hand off to each other, or several articles; start a new
paragraph with an empty line.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="size",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A file, a tree or an article larger than anyone can follow.",
)
