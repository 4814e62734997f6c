"""A step that programs, configures or initialises a module, to which a path leads on which the
supply has not been proved, or no support supply is connected. Releasing the supply, disconnecting
the battery and driving end it.

Why: A supply that drops while a module is written to can lose the module for good.

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
      check: Battery voltage at rest
      when: [loads off]
      does: [check-supply]
      reading: {unit: V, from: 0, to: 16, resolution: 0.01, origin: common practice}
      results:
        - {result: below 12.4, branch: repair}
        - {result: at least 12.4, done: yes, branch: hold}
    hold:
      action: Connect the stable supply
      does: [hold-supply]
      put_back: Take the stable supply off
      then: configure
    configure:
      check: Configure the radio
      does: [configure radio]
      hazards: [supply-while-programming]
      results:
        - {result: accepted, done: yes, branch: all-good}
        - {result: refused, branch: repair}

Fix: Let a step with `does: [check-supply]`, its good result marked `done: yes`, and one with
`does: [hold-supply]` come first on every path.
"""

from collections.abc import Iterator

from builder.graph.requirements import SUPPLY_HELD, SUPPLY_PROVED, Requirement
from builder.model.finding import Finding, Severity
from builder.rules.shared.order import (
    entering_handoffs,
    path_as_text,
    reached_steps,
    unmet,
    unmet_deeds,
)
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="supply-before-programming",
    family=Family.ORDER,
    severity=Severity.ERROR,
    summary="A module is written to before the supply is proved and held.",
)
MISSING = {
    SUPPLY_PROVED: "the supply is not proved",
    SUPPLY_HELD: "no support supply is connected",
}


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every deed that writes to a module on an unproved or unheld supply."""
    for requirement in (SUPPLY_PROVED, SUPPLY_HELD):
        if any(True for step in facts.steps for _ in unmet_deeds(step, requirement)):
            yield from _unmet(facts, requirement)


def _unmet(facts: Facts, requirement: Requirement) -> Iterator[Finding]:
    found = unmet(facts, requirement)
    for step, place in reached_steps(found, facts):
        for deed in unmet_deeds(step, requirement):
            yield RULE.finding(
                deed.text.at,
                f"{MISSING[requirement]} before `{deed.text}`: {path_as_text(found, place)}",
                "a supply that drops while a module is written to can lose the module",
                f"let a step with `does: [{requirement.met_by}]` come first on this path",
                *entering_handoffs(facts, found, place),
            )
