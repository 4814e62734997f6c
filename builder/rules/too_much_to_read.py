"""A tree with more checks and actions than the shop allows, or a step with too many words. The
limits are `most_steps` and `most_words` in `site_config/shop.yml`; by default 24 and 30.

A note has 30 words, a note and its `do` lines 40 together, and `do` has 8 lines. These are limits,
not targets: most steps need no `do` lines and no note.

Why: Nobody reads a manual beside a running engine; what isn't read isn't done.

Wrong:

    # trees/charging/case.yml
    drive: with care
    why: It may stall.
    steps:
      belt:
        check: Is the belt tight?
        note: >-
          The belt runs over the alternator and the water pump and the tensioner and the idler,
          and it has to be dry and clean and whole and tight, but not so tight that bearings wear.
        results: {yes: all-good, no: repair}

Right:

    # trees/charging/case.yml
    drive: with care
    why: It may stall.
    steps:
      belt:
        check: Is the belt tight?
        note: A belt that is too tight wears the bearings.
        results: {yes: all-good, no: repair}

Fix: Take words out, move a method to an article, a test everyone knows to a procedure, and what is
rare to a tree of its own.
"""

from collections.abc import Iterator

from builder.model.checks import Check
from builder.model.finding import Finding, Severity
from builder.model.tree import Action, Step
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="too-much-to-read",
    family=Family.LENGTH,
    severity=Severity.WARNING,
    summary="A tree with too many steps, or a step with too many words.",
)
WHY = "what isn't read isn't done"
MOST_LINES = 8
BOTH = 10  # words that `do` and `note` may have together beyond those of a note


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for a tree that is too long, and for every step that is."""
    shop = facts.library.shop
    work = [step for step in facts.tree.steps.values() if isinstance(step.body, Check | Action)]
    if len(work) > shop.most_steps:
        yield RULE.finding(work[shop.most_steps].id.at,
                           f"{len(work)} checks and actions; limit {shop.most_steps}", WHY,
                           "split it over trees and procedures")  # fmt: skip
    for step in facts.steps:
        yield from _words(step, shop.most_words)


def _words(step: Step, most: int) -> Iterator[Finding]:
    note, do = _count(step.note or ""), sum(map(_count, step.do))
    if step.note and note > most:
        yield RULE.finding(step.note.at, f"`note` has {note} words; limit {most}", WHY,
                           "take words out, or move them to an article")  # fmt: skip
    elif step.do and note + do > most + BOTH:
        yield RULE.finding(step.do[0].at, f"`do` and `note` have {note + do} words; limit "
                           f"{most + BOTH}", WHY, "take words out, or move the method to an "
                           "article")  # fmt: skip
    if len(step.do) > MOST_LINES:
        yield RULE.finding(step.do[MOST_LINES].at, f"`do` has {len(step.do)} lines; limit "
                           f"{MOST_LINES}", WHY, "split the step in two")  # fmt: skip


def _count(text: str) -> int:
    return len(text.split())
