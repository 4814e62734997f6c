"""All rules over one tree, and over the whole library.

In: a `Tree` or the `Library`, and the day it is. Out: findings in the order of the file. In a draft
every finding is a warning; a retired tree is out of use, and only what replaced it is judged (by a
rule over the library). What other trees say of a tree matters to its own judgement in one way only:
by where they hand over to it, see `stands_alone`. A rule silenced on a
line, with a reason, says nothing there.
"""

from collections.abc import Iterable
from datetime import date

from builder.model.finding import Finding
from builder.model.library import Library
from builder.model.summary import TreeListing
from builder.model.tree import Status, Tree
from builder.rules.catalog import PER_LIBRARY, PER_TREE
from builder.rules.shared.rule import as_warning, facts_of
from builder.rules.unused_silence import applied, malformed

OF_TREES = frozenset(rule.RULE.name for rule in PER_TREE)
OF_THE_LIBRARY = frozenset(rule.RULE.name for rule in PER_LIBRARY)
ONLY_OF_THE_LIBRARY = OF_THE_LIBRARY - OF_TREES


def judge(tree: Tree, library: Library) -> tuple[Finding, ...]:
    """Judge one tree by every rule that looks at a tree."""
    if tree.status is Status.RETIRED:
        return ()
    facts = facts_of(tree, library)
    found = [finding for rule in PER_TREE for finding in rule.check(facts)]
    if tree.silences:
        found = [*applied(found, tree.silences, OF_TREES)]
        found += malformed(tree.silences, OF_TREES | ONLY_OF_THE_LIBRARY)
    return _ordered(as_warning(one) if tree.status is Status.DRAFT else one for one in found)


def stands_alone(tree: TreeListing, library: Library) -> bool:
    """Whether a tree is judged the same without its neighbours.

    It is unless others lead into the middle of it, or it cannot be found but through them.
    """
    callers = library.callers.get(tree.id, ())
    return not any(step for _, step in callers) and (tree.searchable or not callers)


def judge_library(library: Library, today: date) -> tuple[Finding, ...]:
    """Judge the knowledge, and the trees beside each other."""
    trees = [tree for tree in library.listings.values() if tree.status is not Status.RETIRED]
    drafts = {tree.file for tree in trees if tree.status is Status.DRAFT}
    silenced = [library.trees[tree.id].silences for tree in trees if tree.silences]
    silences = [silence for silences in silenced for silence in silences]
    found = [finding for rule in PER_LIBRARY for finding in rule.check_library(library, today)]
    kept = [*applied(found, silences, ONLY_OF_THE_LIBRARY)]
    if library.silences:
        kept = [*applied(kept, library.silences, OF_THE_LIBRARY)]
        kept += malformed(library.silences, OF_THE_LIBRARY)
    return _ordered(as_warning(one) if one.at.file in drafts else one for one in kept)


def _ordered(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    return tuple(sorted(findings, key=lambda one: (*one.at[:3], one.rule)))
