"""A file among the pictures that is no plain picture.

Why: All that lies in `kb/how-to/pictures/` is published as it is. A page among it, or a drawing
with a script in it, would run in a reader's browser.

Wrong:

    # kb/how-to/pictures/fuse-drop.svg
    <svg xmlns="http://www.w3.org/2000/svg" onload="go()"/>

Right:

    # kb/how-to/pictures/fuse-drop.svg
    <svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0h9"/></svg>

Mend: Save the drawing without scripts and with all of it in the file, or as PNG; put files that
are no pictures elsewhere.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Rule

RULE = Rule(
    name="unsafe-picture",
    family="text",
    severity=Severity.ERROR,
    summary="A file among the pictures that is no plain picture.",
)
