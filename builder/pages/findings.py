"""What `baytree serve` shows of mistakes: at the top of a page, and as a list of all.

In: findings, and a function that returns a line of a file with a mark under a range. Out: `Page`s.
"""

from collections.abc import Callable, Iterable
from dataclasses import replace

from markupsafe import Markup

from builder.model.finding import Finding
from builder.model.text import Position
from builder.pages.page import Page
from builder.pages.render import render

MarkedLines = Callable[[Position], str]


def broken_page(
    path: str, findings: Iterable[Finding], lines: MarkedLines, sound: Page | None
) -> Page:
    """Write the page of a file with mistakes: these, then the page as it was without any."""
    ordered = _ordered(findings)
    body = render(
        "findings.html", path, findings=ordered, lines=lines, file=ordered[0].at.file, sound=sound
    )
    if sound is None:
        return Page(path, f"{path} can't be shown", body)
    return replace(sound, body=Markup(body + sound.body))


def findings_page(findings: Iterable[Finding], lines: MarkedLines) -> Page:
    """Write the list of every finding in the shop."""
    ordered = _ordered(findings)
    body = render("findings.html", "findings", findings=ordered, lines=lines, file="", sound=None)
    return Page("findings", "Findings", body)


def _ordered(findings: Iterable[Finding]) -> list[Finding]:
    return sorted(findings, key=lambda finding: (finding.at, finding.rule))
