"""A link in an article that isn't a page.

Why: It could run a script in a reader's browser.

Wrong:

    # kb/how-to/belt.md
    ---
    title: Belt and tensioner
    purpose: Finds a belt that slips
    hazards: [rotating-parts]
    reviewed: {by: M. Lind, date: 2026-09-01}
    ---
    Tap [here](javascript:go).

Right:

    # kb/how-to/belt.md
    ---
    title: Belt and tensioner
    purpose: Finds a belt that slips
    hazards: [rotating-parts]
    reviewed: {by: M. Lind, date: 2026-09-01}
    ---
    Then measure the [voltage drop](voltage-drop.md).

Fix: Link to a page: `[words](other-article.md)`, or to an address that begins with https.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="unsafe-link",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A link in an article that isn't a page.",
)
