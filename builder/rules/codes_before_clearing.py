"""A step that clears DTCs, or disconnects the battery, on a path that hasn't recorded them. For
disconnecting the battery it's a warning: that erases DTCs on many vehicles, not on all.

Why: What the modules knew about the fault is gone for good, and it may be weeks before the fault
comes back.

Wrong:

    clear:
      action: Clear all codes
      does: [clear-codes]
      then: again
    again:
      check: Does the code come back?
      results:
        - {result: yes, branch: repair}
        - {result: no, branch: all-good}

Right:

    record:
      action: Save the codes of all modules
      does: [record-codes]
      then: clear
    clear:
      action: Clear all codes
      does: [clear-codes]
      then: again
    again:
      check: Does the code come back?
      results:
        - {result: yes, branch: repair}
        - {result: no, branch: all-good}

Fix: Put a step with `does: [record-codes]` first on every path; if it has results, mark the good
one `done: yes`. A tree that only other trees lead to starts with what all of them did.
"""

import re
from collections.abc import Iterator

from builder.graph.deeds import all_deeds
from builder.graph.requirements import CODES_RECORDED
from builder.model.checks import Check
from builder.model.finding import Finding, Severity
from builder.model.tree import Deed
from builder.rules.shared.early_deeds import EarlyDeed, early_deeds
from builder.rules.shared.rule import Facts, Family, Rule, as_warning

RULE = Rule(
    name="codes-before-clearing",
    family=Family.ORDER,
    severity=Severity.ERROR,
    summary="DTCs are cleared before they are recorded.",
)
SAVES = re.compile(r"\b(?:save|record|write down|note)\b.*\b(?:DTCs?|codes?)\b", re.IGNORECASE)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for everything that can erase DTCs before they are recorded."""
    for early in _first_to_mend(facts):
        finding = RULE.finding(
            early.at,
            f"{early.words} runs before the DTCs are recorded: {early.path}",
            "what the modules knew about the fault is gone for good",
            _hint(facts, early.deed),
            *early.related,
        )
        yield finding if early.deed.verb == "clear-codes" else as_warning(finding)


def _first_to_mend(facts: Facts) -> Iterator[EarlyDeed]:
    """Yield what is early; where nothing records the DTCs, one step mends all of it."""
    every = [*early_deeds(facts, CODES_RECORDED)]
    if not every or _records(facts):
        yield from every[:1] if _left_undone(facts) else every
        return
    clearing = [early for early in every if early.deed.verb == "clear-codes"]
    yield min(clearing or every, key=lambda early: early.at)


def _records(facts: Facts) -> bool:
    deeds = (deed for step in facts.steps for deed in all_deeds(step))
    return any(deed.verb == CODES_RECORDED.met_by for deed in deeds)


def _hint(facts: Facts, early: Deed) -> str:
    if early.verb == "clear-codes" and facts.tree.start.does == (early,):
        return "write `record-codes` if this step saves them; else add an earlier step that does"
    same = next((step.does for step in facts.steps if early in step.does), ())
    if any(deed.verb == CODES_RECORDED.met_by for deed in same):
        return "a step does them in this order: write `record-codes` before it"
    saving = next((step.id for step in facts.steps if SAVES.search(step.text)), None)
    if saving and not _records(facts):
        return f"if `{saving}` saves them, add `does: [record-codes]` to it; else an earlier step"
    if undone := _left_undone(facts):
        return undone
    return "add an earlier step with `does: [record-codes]`"


def _left_undone(facts: Facts) -> str | None:
    """Return the hint for the one result that goes on without `done: yes`, where others have it."""
    for step in facts.steps:
        if isinstance(step.body, Check) and any(d.verb == CODES_RECORDED.met_by for d in step.does):
            undone = [one for one in step.body.results if not (one.done or one.branch.leaves)]
            if len(undone) == 1 and len(step.body.results) > len(undone) + 1:
                return f"if `{step.id}` has saved them, add `done: yes` to its `{undone[0].text}`"
    return None
