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

from collections.abc import Iterator

from builder.graph.requirements import CODES_RECORDED
from builder.model.finding import Finding, Severity
from builder.model.tree import Deed
from builder.rules.shared.early_deeds import early_deeds
from builder.rules.shared.rule import Facts, Family, Rule, as_warning

RULE = Rule(
    name="codes-before-clearing",
    family=Family.ORDER,
    severity=Severity.ERROR,
    summary="DTCs are cleared before they are recorded.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for everything that can erase DTCs before they are recorded."""
    for early in early_deeds(facts, CODES_RECORDED):
        finding = RULE.finding(
            early.at,
            f"{early.words} runs before the DTCs are recorded: {early.path}",
            "what the modules knew about the fault is gone for good",
            _hint(facts, early.deed),
            *early.related,
        )
        yield finding if early.deed.verb == "clear-codes" else as_warning(finding)


def _hint(facts: Facts, early: Deed) -> str:
    same = next((step.does for step in facts.steps if early in step.does), ())
    if any(deed.verb == CODES_RECORDED.met_by for deed in same):
        return "a step does them in this order: write `record-codes` before it"
    return "add an earlier step with `does: [record-codes]`"
