"""What stands in place of a page whose file has a mistake, while an author is at work.

In: findings. Out: `Page`s: one for the broken tree, one that lists every finding.
"""

from collections.abc import Iterable

from builder.model.finding import Finding
from builder.pages import addresses
from builder.pages.page import Page
from builder.pages.render import render


def broken_page(id_: str, findings: Iterable[Finding]) -> Page:
    """Write the page of a tree that cannot be shown: its mistakes, at their lines."""
    path = addresses.tree(id_)
    body = render("findings.html", path, findings=_ordered(findings), tree=id_)
    return Page(path, f"{id_} cannot be shown", body)


def findings_page(findings: Iterable[Finding]) -> Page:
    """Write the page of every finding of the shop."""
    body = render("findings.html", "findings", findings=_ordered(findings), tree="")
    return Page("findings", "Findings", body)


def _ordered(findings: Iterable[Finding]) -> list[Finding]:
    return sorted(findings, key=lambda one: (one.at, one.rule))
