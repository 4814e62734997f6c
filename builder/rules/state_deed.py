"""A step that writes in `does` what a state counts as already, such as `hold-supply`.

Why: What is written and what the walk does at the vehicle would drift apart, and the check of the
order would believe what is written.

Wrong:

    steps:
      hold:
        action: Get ready to program
        when: [battery-support, key-on]
        does: [hold-supply]
        then: all-good

Right:

    steps:
      hold:
        action: Get ready to program
        when: [battery-support, key-on]
        then: all-good

Fix: Delete it, and name the state in `when`.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="state-deed",
    family=Family.STATES,
    severity=Severity.ERROR,
    summary="A step writes in `does` what a state counts as.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for everything a step does that only states may do."""
    if not any(step.does for step in facts.steps):
        return
    states: dict[str, list[str]] = {}
    for name, one in facts.conditions().items():
        for deed in one.does:
            states.setdefault(deed.verb, []).append(f"`{name}`")
        for deed in one.undo_does:
            states.setdefault(deed.verb, [])
    for step in facts.steps:
        for deed in step.does:
            if deed.verb in states:
                names = " or ".join(states[deed.verb])
                yield RULE.finding(
                    deed.text.at,
                    f"`{deed.text}` is what a state of the vehicle does",
                    "what is written and what is done at the vehicle can differ",
                    f"name {names} in `when`, in place of it"
                    if names
                    else "leave it out: the walk does it when the state ends",
                )
