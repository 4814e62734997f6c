"""A step that clears codes, or disconnects the battery, to which a path leads on which nobody has
recorded them. Disconnecting the battery is a warning: on many vehicles it erases codes, on some it
does not.

Why: What the modules knew about the fault is gone for good, and the fault may take weeks to show
itself again.

Wrong:

    clear:
      action: Clear all codes
      does: [clear-codes]
      then: again
    again:
      check: Code comes back
      results:
        - {result: yes, branch: repair}
        - {result: no, branch: all-good}

Right:

    record:
      action: Record the codes of every module
      does: [record-codes]
      then: clear
    clear:
      action: Clear all codes
      does: [clear-codes]
      then: again
    again:
      check: Code comes back
      results:
        - {result: yes, branch: repair}
        - {result: no, branch: all-good}

Fix: Let a step with `does: [record-codes]` come first on every path; with results, mark the one by
which it is achieved with `done: yes`. A tree that only others lead to has what all of them did.
"""

from collections.abc import Iterator

from builder.graph.requirements import CODES_RECORDED
from builder.model.finding import Finding, Severity
from builder.rules.shared.order import (
    entering_handoffs,
    path_as_text,
    reached_steps,
    unmet,
    unmet_deeds,
)
from builder.rules.shared.rule import Facts, Family, Rule, as_warning

RULE = Rule(
    name="codes-before-clearing",
    family=Family.ORDER,
    severity=Severity.ERROR,
    summary="Codes are cleared before anybody has recorded them.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every deed that can erase codes which are not recorded."""
    if not any(True for step in facts.steps for _ in unmet_deeds(step, CODES_RECORDED)):
        return
    found = unmet(facts, CODES_RECORDED)
    for step, place in reached_steps(found, facts):
        for deed in unmet_deeds(step, CODES_RECORDED):
            finding = RULE.finding(
                deed.text.at,
                f"no step has recorded the codes before `{deed.text}`: "
                f"{path_as_text(found, place)}",
                "what the modules knew about the fault is gone for good",
                "let a step with `does: [record-codes]` come first on this path",
                *entering_handoffs(facts, found, place),
            )
            yield finding if deed.verb == "clear-codes" else as_warning(finding)
