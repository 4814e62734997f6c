"""HTML in an article.

Why: An article is plain text and Markdown; HTML could run a script in a reader's browser.

Wrong:

    # kb/how-to/belt.md
    ---
    title: Belt and tensioner
    purpose: Finds a belt that slips
    hazards: [rotating-parts]
    reviewed: {by: M. Lind, date: 2026-09-01}
    ---
    Turn the engine <b>off</b>.

Right:

    # kb/how-to/belt.md
    ---
    title: Belt and tensioner
    purpose: Finds a belt that slips
    hazards: [rotating-parts]
    reviewed: {by: M. Lind, date: 2026-09-01}
    ---
    Turn the engine **off**.

Fix: Write it as Markdown; put a lone `<` in backquotes.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="raw-html",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="HTML in an article.",
)
