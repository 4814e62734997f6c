"""The page of every rule: complete, and its examples true."""

import pytest

from builder.rules.catalog import RULES
from builder.rules.shared.documentation import RulePage, documented_rules

from .conftest import SHOP, Judged, files_of, of_shop

MODULES = {rule.RULE.name: rule for rule in RULES}
PAGES = {page.rule.name: page for page in documented_rules()}
# Not in the text of a tree.
CANNOT_BE_SHOWN = {"encoding", "link", "size", "unreadable", "file-name"}


@pytest.mark.parametrize("page", PAGES.values(), ids=PAGES)
def test_the_wrong_example_gives_the_finding(page: RulePage, judged: Judged) -> None:
    """Whoever reads the page sees what the checker sees."""
    if page.rule.name in CANNOT_BE_SHOWN:
        return
    found = {one.rule for one in judged(files_of(page.wrong))}
    assert page.rule.name in found


@pytest.mark.parametrize("page", PAGES.values(), ids=PAGES)
def test_the_right_example_gives_no_finding(page: RulePage, judged: Judged) -> None:
    """What is offered as right is right by every rule."""
    if page.rule.name in CANNOT_BE_SHOWN - {"encoding"}:
        return
    assert judged(files_of(page.right)) == []


@pytest.mark.parametrize("name", MODULES)
def test_a_rule_is_named_as_its_module(name: str) -> None:
    """Whoever reads a finding finds the rule by its name."""
    module = MODULES[name]
    assert module.__name__.rsplit(".", 1)[-1] == name.replace("-", "_")


def test_the_shop_of_the_tests_is_sound() -> None:
    """Cases are judged beside knowledge that has no finding of its own."""
    assert of_shop(SHOP) == []
