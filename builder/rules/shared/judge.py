"""All rules over one tree, and over the whole library.

In: a `Tree` or the `Library`, and today's date. Out: findings in the order of the file. In a draft
every finding is a warning. A retired tree is out of use; a rule over the library checks only what
replaced it. Other trees affect the findings of a tree in one way only: by where they hand off
to it, see `is_independent`. A rule that is silenced on a line, with a reason, says nothing there.
"""

from collections.abc import Callable, Iterable
from datetime import date

from builder.model.finding import Finding
from builder.model.library import Library
from builder.model.summary import TreeListing
from builder.model.tree import Status, Tree
from builder.rules import (
    already_passing,
    closed_job,
    codes_before_clearing,
    computed,
    no_such_hazard,
    no_such_procedure,
    no_such_spec,
    no_such_tree,
    no_such_word,
    not_secured,
    procedure_values,
    prove_before_replacing,
    proved_by,
    reading_gap,
    spec_load,
    spec_result,
    supply_before_programming,
    swapped_answers,
    unbounded_way_back,
    unhandled_word,
    unlike_other_fixes,
    unlike_the_others,
    unreachable_step,
)
from builder.rules.catalog import LIBRARY_RULES, TREE_RULES
from builder.rules.shared.rule import as_warning, facts_of
from builder.rules.unused_silence import malformed, not_silenced

TREE_RULE_NAMES = frozenset(rule.RULE.name for rule in TREE_RULES)
LIBRARY_RULE_NAMES = frozenset(rule.RULE.name for rule in LIBRARY_RULES)
ORDER_ALONG_PATHS = (codes_before_clearing, supply_before_programming, prove_before_replacing)
STOPS_A_WALK = (
    proved_by, procedure_values, no_such_procedure, no_such_word, unhandled_word, no_such_spec,
    spec_result, spec_load, computed, reading_gap,
)  # fmt: skip
# What must come first waits while a proof shows which branch goes past it; what closed jobs say,
# also while a check can't be walked; a step that nothing leads to, while a loop or a handoff to
# nowhere may be the branch that was meant for it; a proof, while two answers are swapped.
FOLLOWS = {
    closed_job.RULE.name: tuple(one.RULE.name for one in STOPS_A_WALK),
    **{one.RULE.name: (proved_by.RULE.name,) for one in ORDER_ALONG_PATHS},
    unlike_the_others.RULE.name: (not_secured.RULE.name, no_such_hazard.RULE.name),
    proved_by.RULE.name: (swapped_answers.RULE.name,),
    swapped_answers.RULE.name: (already_passing.RULE.name,),
    unlike_other_fixes.RULE.name: (already_passing.RULE.name,),
    unreachable_step.RULE.name: (unbounded_way_back.RULE.name, no_such_tree.RULE.name),
}
LIBRARY_ONLY_NAMES = LIBRARY_RULE_NAMES - TREE_RULE_NAMES


def judge(tree: Tree, library: Library) -> tuple[Finding, ...]:
    """Judge one tree by every rule that looks at a tree."""
    if tree.status is Status.RETIRED:
        return ()
    facts = facts_of(tree, library)
    findings = [finding for rule in TREE_RULES for finding in rule.check(facts)]
    if tree.silences:
        findings = [*not_silenced(findings, tree.silences, TREE_RULE_NAMES)]
        findings += malformed(tree.silences, TREE_RULE_NAMES | LIBRARY_ONLY_NAMES)
    findings = without_what_follows(findings, findings)
    is_draft = tree.status is Status.DRAFT
    return _ordered(as_warning(finding) if is_draft else finding for finding in findings)


def without_what_follows(findings: Iterable[Finding], causes: Iterable[Finding]) -> list[Finding]:
    """Leave out what may only follow from one of the causes, which say what to correct."""
    rules = {one.rule for one in causes}
    return [one for one in findings if rules.isdisjoint(FOLLOWS.get(one.rule, ()))]


def is_independent(tree: TreeListing, library: Library) -> bool:
    """Whether a tree gets the same findings without the other trees.

    It does unless others lead into the middle of it, or are the only way to it.
    """
    callers = library.callers.get(tree.id, ())
    return not any(step for _, step in callers) and (tree.searchable or not callers)


def _of_procedures(library: Library) -> tuple[Finding, ...]:
    procedures = [one.tree for one in library.procedures.values()]
    return tuple(finding for tree in procedures for finding in judge(tree, library))


def judge_library(
    library: Library, today: date, of_procedures: Callable[[], tuple[Finding, ...]] | None = None
) -> tuple[Finding, ...]:
    """Judge the knowledge, and all trees together.

    `of_procedures` has what the rules say of the procedures with the same knowledge, but without
    trees: that is the same, unless a tree wrongly leads into a procedure.
    """
    led_into = any(one.tree.id in library.callers for one in library.procedures.values())
    judged = _of_procedures(library) if led_into or not of_procedures else of_procedures()
    trees = [tree for tree in library.listings.values() if tree.status is not Status.RETIRED]
    drafts = {tree.file for tree in trees if tree.status is Status.DRAFT}
    silenced = [library.trees[tree.id].silences for tree in trees if tree.silences]
    silences = [silence for silences in silenced for silence in silences]
    every = (finding for rule in LIBRARY_RULES for finding in rule.check_library(library, today))
    findings = [*not_silenced(every, silences, LIBRARY_ONLY_NAMES)]
    if library.silences:
        findings = [*not_silenced(findings, library.silences, LIBRARY_RULE_NAMES)]
        findings += malformed(library.silences, LIBRARY_RULE_NAMES)
    in_drafts = (as_warning(one) if one.at.file in drafts else one for one in findings)
    return _ordered((*judged, *in_drafts))


def _ordered(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    return tuple(sorted(findings, key=lambda finding: (*finding.at[:3], finding.rule)))
