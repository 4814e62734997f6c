"""The page of every rule: complete, with examples that hold."""

import pytest

from builder.rules.catalog import RULES
from builder.rules.shared.documentation import RulePage, documented_rules

from .conftest import SHOP, Judged, files_of, of_shop

MODULES = {rule.RULE.name: rule for rule in RULES}
PAGES = {page.rule.name: page for page in documented_rules()}
# The error is not in the text of a tree.
NOT_IN_TEXT = {"encoding", "link", "size", "unreadable", "file-name"}


@pytest.mark.parametrize("page", PAGES.values(), ids=PAGES)
def test_the_wrong_example_gives_the_finding(page: RulePage, judged: Judged) -> None:
    """The page shows what the check finds."""
    if page.rule.name in NOT_IN_TEXT:
        return
    rules = {finding.rule for finding in judged(files_of(page.wrong))}
    assert page.rule.name in rules


@pytest.mark.parametrize("page", PAGES.values(), ids=PAGES)
def test_the_right_example_gives_no_finding(page: RulePage, judged: Judged) -> None:
    """What the page calls right is right by every rule."""
    if page.rule.name in NOT_IN_TEXT - {"encoding"}:
        return
    assert judged(files_of(page.right)) == []


@pytest.mark.parametrize("name", MODULES)
def test_a_rule_is_named_as_its_module(name: str) -> None:
    """The name in a finding leads to the rule's file."""
    module = MODULES[name]
    assert module.__name__.rsplit(".", 1)[-1] == name.replace("-", "_")


def test_the_shop_of_the_tests_is_sound() -> None:
    """The knowledge around the cases has no finding of its own."""
    assert of_shop(SHOP) == []
