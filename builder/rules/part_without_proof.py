"""A fix that sells a part and is entered by something that proves nothing: an action, a limit that
is used up, a check that couldn't be done, a repair that didn't help.

A result of a check enters a fix that has `parts` or `replaces`, and that check convicts the part.

Why: The customer pays for a good part, and the fault stays.

Wrong:

    drive: with care
    why: It may stall.
    steps:
      charge:
        action: Charge the battery
        then: battery
      battery:
        fix: Replace the battery
        cause: The battery is worn out
        weight: 1
        parts: [{part: battery, price: 145}]
        verify: [engine starts]

Right:

    drive: with care
    why: It may stall.
    steps:
      charge:
        action: Charge the battery
        then: load
      load:
        check: What does the battery tester show?
        results: {replace: battery, good: all-good}
      battery:
        fix: Replace the battery
        cause: The battery is worn out
        weight: 1
        parts: [{part: battery, price: 145}]
        verify: [engine starts]

Fix: Lead to a check that proves the part bad, or to a stop for the foreman.
"""

from collections.abc import Iterator

from builder.graph.moves import Move
from builder.graph.routes import ExitKind
from builder.model.ends import Fix
from builder.model.finding import Finding, Severity
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="part-without-proof",
    family=Family.EVIDENCE,
    severity=Severity.ERROR,
    summary="A part is sold that no result has proved bad.",
)
WORDS = {
    ExitKind.THEN: "after an action",
    ExitKind.BACK: "after an action",
    ExitKind.SPENT: "because a limit is used up",
    ExitKind.CANNOT_TEST: "because a check can't be done",
    ExitKind.STILL_THERE: "because another repair didn't help",
}


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every entry of a fix with parts that is no result of a check."""
    for step in facts.steps:
        if isinstance(step.body, Fix) and (step.body.parts or step.body.replaces):
            for move in facts.graph.moves_into.get(step.id, ()):
                if move.route.exit.kind in WORDS:
                    yield _finding(step.id, move)


def _finding(fix: str, move: Move) -> Finding:
    exit_ = move.route.exit
    return RULE.finding(
        exit_.at,
        f"`{fix}` sells a part {WORDS[exit_.kind]}: {move.source.step} -> {fix}",
        "the customer pays for a part that nothing has proved bad",
        "lead to a check that proves it bad, or to a stop for the foreman",
    )
