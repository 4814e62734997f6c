"""All rules over one tree, and over the whole library.

In: a `Tree` or the `Library`, and the day it is. Out: findings in the order of the file. In a draft
every finding is a warning; of a retired tree only what replaced it is judged.
"""

from collections.abc import Iterable
from datetime import date

from builder.model.finding import Finding
from builder.model.library import Library
from builder.model.tree import Tree
from builder.rules import no_such_tree
from builder.rules.all import PER_LIBRARY, PER_TREE
from builder.rules.rule import TreeRule, as_warning, facts_of

OF_A_RETIRED_TREE: tuple[TreeRule, ...] = (no_such_tree,)


def judge(tree: Tree, library: Library, today: date) -> tuple[Finding, ...]:
    """Judge one tree by every rule that looks at a tree."""
    facts = facts_of(tree, library, today)
    rules = OF_A_RETIRED_TREE if tree.status == "retired" else PER_TREE
    found = [finding for rule in rules for finding in rule.check(facts)]
    return _ordered(as_warning(one) if tree.status == "draft" else one for one in found)


def judge_library(library: Library, today: date) -> tuple[Finding, ...]:
    """Judge the knowledge, and the trees beside each other."""
    drafts = {tree.file for tree in library.trees.values() if tree.status == "draft"}
    found = [finding for rule in PER_LIBRARY for finding in rule.check_library(library, today)]
    return _ordered(as_warning(one) if one.at.file in drafts else one for one in found)


def _ordered(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    return tuple(sorted(findings, key=lambda one: (*one.at[:3], one.rule)))
