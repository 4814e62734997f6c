"""A file among the pictures that is no plain picture, is damaged, or is too large to open.

Why: All that lies in `kb/how-to/pictures/` is published. A page among it, or a drawing with a
script in it, would run in a reader's browser; a damaged photo would show nothing.

Wrong:

    # kb/how-to/pictures/fuse-drop.svg
    <svg xmlns="http://www.w3.org/2000/svg" onload="go()"/>

Right:

    # kb/how-to/pictures/fuse-drop.svg
    <svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0h9"/></svg>

Fix: Save the drawing as plain SVG in UTF-8, without scripts and with all of it in the file. A
photo may come as the phone took it: it is turned upright, made small, and loses what it tells of
place and camera. Put files that are no pictures elsewhere.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="unsafe-picture",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A file among the pictures that is no plain picture.",
)
