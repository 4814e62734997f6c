"""A step that programs, configures or initializes a module on a path that hasn't tested the supply
voltage, or has no power supply connected. Releasing the power supply, disconnecting the battery and
driving end it.

Why: A voltage drop during programming can ruin the module.

Wrong:

    configure:
      check: Configure the radio
      does: [configure radio]
      hazards: [supply-while-programming]
      results:
        - {result: accepted, done: yes, branch: all-good}
        - {result: refused, branch: repair}

Right:

    supply:
      check: Measure open-circuit voltage
      when: [key-off]
      does: [check-supply]
      reading: {unit: V, from: 0, to: 16, resolution: 0.01, origin: common practice}
      results:
        - {result: below 12.4, branch: repair}
        - {result: at least 12.4, done: yes, branch: hold}
    hold:
      action: Connect the programming power supply
      when: [battery-support, key-on]
      then: configure
    configure:
      check: Configure the radio
      does: [configure radio]
      hazards: [supply-while-programming]
      results:
        - {result: accepted, done: yes, branch: all-good}
        - {result: refused, branch: repair}

Fix: Put a step with `does: [check-supply]`, its good result marked `done: yes`, first on every
path, and name in `when` the state that holds the supply, such as `battery-support`.
"""

from collections.abc import Iterator

from builder.graph.requirements import SUPPLY_HELD, SUPPLY_PROVED, Requirement
from builder.model.finding import Finding, Severity
from builder.rules.shared.early_deeds import early_deeds
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="supply-before-programming",
    family=Family.ORDER,
    severity=Severity.ERROR,
    summary="A module is written to without a tested and supported supply.",
)
MISSING = {
    SUPPLY_PROVED: "before the supply voltage is tested",
    SUPPLY_HELD: "with no power supply connected",
}


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every deed that writes to a module on an untested or bare supply."""
    for requirement in (SUPPLY_PROVED, SUPPLY_HELD):
        for early in early_deeds(facts, requirement):
            yield RULE.finding(
                early.at,
                f"{early.words} runs {MISSING[requirement]}: {early.path}",
                "a voltage drop during programming can ruin the module",
                _hint(facts, requirement),
                *early.related,
            )


def _hint(facts: Facts, requirement: Requirement) -> str:
    """Offer the state that counts as it, where there is one."""
    states = [
        f"`{name}`"
        for name, one in facts.conditions().items()
        if any(deed.verb == requirement.met_by for deed in one.does)
    ]
    if states:
        return f"add {' or '.join(states)} to `when`"
    return f"add an earlier step with `does: [{requirement.met_by}]`"
