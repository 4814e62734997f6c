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
      when: [loads off]
      does: [check-supply]
      reading: {unit: V, from: 0, to: 16, resolution: 0.01, origin: common practice}
      results:
        - {result: below 12.4, branch: repair}
        - {result: at least 12.4, done: yes, branch: hold}
    hold:
      action: Connect the programming power supply
      does: [hold-supply]
      put_back: Disconnect the power supply
      then: configure
    configure:
      check: Configure the radio
      does: [configure radio]
      hazards: [supply-while-programming]
      results:
        - {result: accepted, done: yes, branch: all-good}
        - {result: refused, branch: repair}

Fix: Put a step with `does: [check-supply]`, its good result marked `done: yes`, and one with `does:
[hold-supply]` first on every path.
"""

from collections.abc import Iterator

from builder.graph.deeds import unmet_deeds
from builder.graph.requirements import SUPPLY_HELD, SUPPLY_PROVED, Requirement
from builder.model.finding import Finding, Severity
from builder.rules.shared.order import (
    deed_as_text,
    entering_handoffs,
    path_as_text,
    reached_steps,
    unmet,
)
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
        if any(True for step in facts.steps for _ in unmet_deeds(step, requirement)):
            yield from _unmet(facts, requirement)


def _unmet(facts: Facts, requirement: Requirement) -> Iterator[Finding]:
    reached = unmet(facts, requirement)
    for step, place in reached_steps(reached, facts):
        for deed in unmet_deeds(step, requirement):
            yield RULE.finding(
                deed.text.at,
                f"{deed_as_text(step, deed)} runs {MISSING[requirement]}: "
                f"{path_as_text(reached, place)}",
                "a voltage drop during programming can ruin the module",
                f"add an earlier step with `does: [{requirement.met_by}]`",
                *entering_handoffs(facts, reached, place),
            )
