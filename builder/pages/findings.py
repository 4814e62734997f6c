"""What `baytree serve` shows instead of the page of a tree with mistakes.

In: findings. Out: `Page`s: one for the tree, one that lists every finding.
"""

from collections.abc import Iterable

from builder.model.finding import Finding
from builder.pages import addresses
from builder.pages.page import Page
from builder.pages.render import render


def broken_tree_page(id_: str, findings: Iterable[Finding]) -> Page:
    """Write the page of a tree that can't be shown: its mistakes, at their lines."""
    path = addresses.tree_path(id_)
    body = render("findings.html", path, findings=_ordered(findings), tree=id_)
    return Page(path, f"{id_} can't be shown", body)


def findings_page(findings: Iterable[Finding]) -> Page:
    """Write the list of every finding in the shop."""
    body = render("findings.html", "findings", findings=_ordered(findings), tree="")
    return Page("findings", "Findings", body)


def _ordered(findings: Iterable[Finding]) -> list[Finding]:
    return sorted(findings, key=lambda finding: (finding.at, finding.rule))
