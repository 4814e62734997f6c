"""A file or folder that cannot be read: no right to it, no `trees/`, a pipe, a folder for a file.

Why: What lies there drops out of every check, page and search, and the rest looks sound.

Wrong:

    # The folder trees/brakes/ belongs to another user, who alone may open it.

Right:

    # Everyone in the shop may open the folder trees/brakes/ and the files in it.

Fix: Give yourself the right to read it (`chmod -R u+rX` on the folder), or put a file in its
place.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="unreadable",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A file or folder that cannot be read.",
)
