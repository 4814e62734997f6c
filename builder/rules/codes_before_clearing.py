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

from builder.graph.deeds import unmet_deeds
from builder.graph.requirements import CODES_RECORDED
from builder.model.finding import Finding, Severity
from builder.rules.shared.order import (
    deed_as_text,
    entering_handoffs,
    path_as_text,
    reached_steps,
    unmet,
)
from builder.rules.shared.rule import Facts, Family, Rule, as_warning

RULE = Rule(
    name="codes-before-clearing",
    family=Family.ORDER,
    severity=Severity.ERROR,
    summary="DTCs are cleared before they are recorded.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every deed that can erase DTCs before they are recorded."""
    if not any(True for step in facts.steps for _ in unmet_deeds(step, CODES_RECORDED)):
        return
    reached = unmet(facts, CODES_RECORDED)
    for step, place in reached_steps(reached, facts):
        for deed in unmet_deeds(step, CODES_RECORDED):
            finding = RULE.finding(
                deed.text.at,
                f"{deed_as_text(step, deed)} runs before the DTCs are recorded: "
                f"{path_as_text(reached, place)}",
                "what the modules knew about the fault is gone for good",
                "add an earlier step with `does: [record-codes]`",
                *entering_handoffs(facts, reached, place),
            )
            yield finding if deed.verb == "clear-codes" else as_warning(finding)
