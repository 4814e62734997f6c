"""A ready tree that doesn't say whether the vehicle may be driven as it is, and why.

`drive` and `why` at the head hold for every end that has none of its own.

Why: The customer asks first whether it is safe to drive home, and the sheet has no answer.

Wrong:

    title: Horn does not work
    status: ready
    system: charging
    symptom: [no horn]
    written: {by: R. Osei, date: 2026-03-02}
    reviewed: {by: M. Lind, date: 2026-09-01}
    drive: with care
    steps:
      horn:
        check: Does the horn sound?
        results: {yes: all-good, no: repair}
      repair: {fix: Replace the horn, cause: The horn is dead, weight: 1, verify: [horn sounds]}
      all-good: {stop: No fault found today, kind: not-found}

Right:

    title: Horn does not work
    status: ready
    system: charging
    symptom: [no horn]
    written: {by: R. Osei, date: 2026-03-02}
    reviewed: {by: M. Lind, date: 2026-09-01}
    drive: with care
    why: Nobody hears you.
    steps:
      horn:
        check: Does the horn sound?
        results: {yes: all-good, no: repair}
      repair: {fix: Replace the horn, cause: The horn is dead, weight: 1, verify: [horn sounds]}
      all-good: {stop: No fault found today, kind: not-found}

Fix: Write `drive: yes`, `with care` or `no` at the head, and `why` in words for the customer.
"""

from collections.abc import Iterator

from builder.model.ends import Fix, Stop
from builder.model.finding import Finding, Severity
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="no-drive-advice",
    family=Family.DRIVE,
    severity=Severity.ERROR,
    summary="A tree that doesn't say whether the vehicle may be driven.",
)
WHY = "the customer asks whether it is safe to drive home, and the sheet has no answer"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for a head without `drive` or `why`, and for an end with no reason."""
    tree = facts.tree
    if not tree.system:
        return
    missing = [name for name in ("drive", "why") if getattr(tree, name) is None]
    if missing:
        listed = " and ".join(f"`{name}`" for name in missing)
        yield RULE.finding(tree.at, f"the tree has no {listed}", WHY,
                           "write `drive: yes`, `with care` or `no`, and `why: ...`")  # fmt: skip
    for step in facts.steps:
        if isinstance(step.body, Fix | Stop) and step.body.drive and not step.body.why:
            yield RULE.finding(step.id.at, f"`{step.id}` has `drive` but no `why`", WHY,
                               "add `why: ...` in words for the customer")  # fmt: skip
