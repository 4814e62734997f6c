"""All rules over one tree, and over the whole library.

In: a `Tree` or the `Library`, and the day it is. Out: findings in the order of the file. In a draft
every finding is a warning; of a retired tree only what replaced it is judged. A rule silenced on a
line, with a reason, says nothing there.
"""

from collections.abc import Iterable
from datetime import date

from builder.model.finding import Finding
from builder.model.library import Library
from builder.model.tree import Tree
from builder.rules import no_such_tree
from builder.rules.all import PER_LIBRARY, PER_TREE
from builder.rules.rule import TreeRule, as_warning, facts_of
from builder.rules.unused_silence import applied, malformed

OF_A_RETIRED_TREE: tuple[TreeRule, ...] = (no_such_tree,)
OF_TREES = frozenset(rule.RULE.name for rule in PER_TREE)
ONLY_OF_THE_LIBRARY = frozenset(rule.RULE.name for rule in PER_LIBRARY) - OF_TREES


def judge(tree: Tree, library: Library, today: date) -> tuple[Finding, ...]:
    """Judge one tree by every rule that looks at a tree."""
    facts = facts_of(tree, library, today)
    if tree.status == "retired":
        return _ordered(one for rule in OF_A_RETIRED_TREE for one in rule.check(facts))
    found = [finding for rule in PER_TREE for finding in rule.check(facts)]
    if tree.silences:
        found = [*applied(found, tree.silences, OF_TREES)]
        found += malformed(tree.silences, OF_TREES | ONLY_OF_THE_LIBRARY)
    return _ordered(as_warning(one) if tree.status == "draft" else one for one in found)


def judge_library(library: Library, today: date) -> tuple[Finding, ...]:
    """Judge the knowledge, and the trees beside each other."""
    trees = [tree for tree in library.trees.values() if tree.status != "retired"]
    drafts = {tree.file for tree in trees if tree.status == "draft"}
    silences = [silence for tree in trees for silence in tree.silences]
    found = [finding for rule in PER_LIBRARY for finding in rule.check_library(library, today)]
    kept = applied(found, silences, ONLY_OF_THE_LIBRARY)
    return _ordered(as_warning(one) if one.at.file in drafts else one for one in kept)


def _ordered(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    return tuple(sorted(findings, key=lambda one: (*one.at[:3], one.rule)))
