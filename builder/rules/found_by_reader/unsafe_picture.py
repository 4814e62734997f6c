"""A file among the pictures that isn't a plain picture, is damaged, or is too large to open.

Why: Every file in `kb/how-to/pictures/` is published. A page, or a drawing with a script in it,
would run in a reader's browser; a damaged photo would show nothing.

Wrong:

    # kb/how-to/pictures/fuse-drop.svg
    <svg xmlns="http://www.w3.org/2000/svg" onload="go()"/>

Right:

    # kb/how-to/pictures/fuse-drop.svg
    <svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0h9"/></svg>

Fix: Save the drawing as plain SVG in UTF-8, without scripts and with everything inside the file. A
photo can stay as the phone took it: the build turns it upright, shrinks it, and removes its place
and camera data. Put files that aren't pictures somewhere else.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="unsafe-picture",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A file among the pictures that isn't a plain picture.",
)
