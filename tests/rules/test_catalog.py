"""Adding a rule takes one file, one line in the list and its cases; what is forgotten is named."""

import ast
from inspect import signature
from pathlib import Path

import pytest

import builder.rules
from builder.rules.catalog import LIBRARY_RULES, MODULES, RULES, TREE_RULES
from builder.rules.shared.rule import Family

ROOT = Path(builder.rules.__file__).parent
FILES = sorted(
    path
    for folder in (ROOT, ROOT / "found_by_reader")
    for path in folder.glob("*.py")
    if path.name not in ("__init__.py", "catalog.py")
)
CASES = Path(__file__).parent / "cases"
NAMES = sorted(rule.RULE.name for rule in RULES if rule.RULE.family is not Family.TEXT)


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_every_rule_file_is_in_the_list(file: Path) -> None:
    """A rule that nobody runs is no rule: the failure names the line that is missing."""
    name = ".".join(file.relative_to(ROOT).with_suffix("").parts)
    assert name in MODULES, f'builder/rules/catalog.py: add "{name}" to MODULES'


def test_every_line_of_the_list_is_there_once() -> None:
    """A rule that runs twice reports everything twice."""
    twice = sorted({name for name in MODULES if MODULES.count(name) > 1})
    assert not twice, f"builder/rules/catalog.py: {twice} is in MODULES twice"


def test_no_two_rules_have_one_name() -> None:
    """A finding leads to one page."""
    names = [rule.RULE.name for rule in RULES]
    assert len(names) == len(set(names))


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_a_rule_file_has_what_a_rule_needs(file: Path) -> None:
    """`RULE` and a docstring; outside of `found_by_reader` also something that judges."""
    tree = ast.parse(file.read_text(encoding="utf-8"))
    functions = {node.name for node in tree.body if isinstance(node, ast.FunctionDef)}
    names = {
        target.id
        for node in tree.body
        if isinstance(node, ast.Assign)
        for target in node.targets
        if isinstance(target, ast.Name)
    }
    assert ast.get_docstring(tree), f"{file}: write the rule's page as its docstring"
    assert "RULE" in names, f"{file}: add RULE = Rule(...)"
    judging = {"check", "check_library"} & functions
    if file.parent == ROOT and file.stem != "unused_silence":  # which runs inside the judge
        assert judging, f"{file}: add check(facts) or check_library(library, today)"


def test_what_judges_takes_what_the_judge_gives() -> None:
    """`check` takes the facts of a tree, `check_library` the library and the date."""
    assert all(len(signature(rule.check).parameters) == 1 for rule in TREE_RULES)
    assert all(len(signature(rule.check_library).parameters) == 2 for rule in LIBRARY_RULES)


@pytest.mark.parametrize("name", NAMES)
def test_every_rule_has_two_bad_and_two_good_cases(name: str) -> None:
    """No rule is unproved: the failure names the files that are missing."""
    for kind in ("bad", "good"):
        cases = list((CASES / name).glob(f"{kind}-*.yml"))
        assert len(cases) >= 2, f"tests/rules/cases/{name}/: add two files named {kind}-*.yml"


def test_every_folder_of_cases_is_that_of_a_rule() -> None:
    """Cases of a rule that was renamed or removed don't stay behind."""
    left = sorted(folder.name for folder in CASES.iterdir() if folder.name not in NAMES)
    assert not left, f"tests/rules/cases/: no rule is called {left}"


def test_rules_of_one_family_are_listed_together() -> None:
    """The list of rules on the site has one heading per family."""
    families = [rule.RULE.family for rule in RULES]
    assert families == sorted(families, key=list(Family).index)
