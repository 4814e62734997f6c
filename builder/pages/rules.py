"""The rules of the check: what each finds, why it matters in the bay, a wrong and a right example.

In: the documentation in each rule's module. Out: `Page`s.
"""

from collections.abc import Iterator
from itertools import groupby

from builder.pages import addresses
from builder.pages.page import Page
from builder.pages.render import render
from builder.rules.shared.documentation import RulePage, documented_rules


def rule_pages() -> Iterator[Page]:
    """Yield the list of rules and the page of each."""
    rules = list(documented_rules())
    families = [(name, list(group)) for name, group in groupby(rules, key=_family)]
    body = render("rules.html", "rules/index", families=families)
    yield Page("rules/index", "Checks", body)
    for page in rules:
        path = addresses.rule_path(page.rule.name)
        yield Page(path, page.rule.name, render("rule.html", path, page=page))


def _family(page: RulePage) -> str:
    return page.rule.family
