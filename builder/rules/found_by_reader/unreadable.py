"""A file or folder that can't be read: no permission, no `trees/`, a pipe, a folder in place of a
file.

Why: Its content drops out of every check, page and search, and the rest looks fine.

Wrong:

    # The folder trees/brakes/ belongs to another user, and only that user may open it.

Right:

    # Everyone in the shop may open the folder trees/brakes/ and the files in it.

Fix: Give yourself permission to read it (`chmod -R u+rX` on the folder), or put a file in its
place.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="unreadable",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A file or folder that can't be read.",
)
