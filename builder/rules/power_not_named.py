"""A step with a state that asks for another one to be named too (`also_say`), and doesn't name it.

Why: A connector that is opened, or a vehicle on the lift, is safe in some power states only. The
tech must see which one is meant.

Wrong:

    steps:
      rotors:
        check: Are the rotors good?
        when: [raised]
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Right:

    steps:
      rotors:
        check: Are the rotors good?
        when: [raised, key-off]
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Add a state of the group to `when`: mostly `key-off`.
"""

from collections.abc import Iterator
from datetime import date

from builder.graph.sound_conditions import conditions_for
from builder.model.conditions import Conditions
from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.rules.shared.named_needs import (
    NamedNeeds,
    needs_of_modules,
    needs_of_steps,
)
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="power-not-named",
    family=Family.STATES,
    severity=Severity.ERROR,
    summary="A step doesn't name the power state that one of its states asks for.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every state of a step without the other one that it asks for."""
    for named in needs_of_steps(facts):
        yield from _silent(named, facts.conditions())


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every such state in a module's record."""
    for named in needs_of_modules(library):
        yield from _silent(named, conditions_for(library))


def _silent(named: NamedNeeds, conditions: Conditions) -> Iterator[Finding]:
    pairs = named.states(conditions)
    groups = {str(conditions[state.condition].group) for _, state in pairs}
    for need, state in pairs:
        group = conditions[state.condition].also_say
        if group and group not in groups:
            names = [f"`{name}`" for name, one in conditions.items() if one.group == group]
            yield RULE.finding(
                need.condition.at,
                f"`{need.condition}` without a state of `{group}`",
                "in some of them this hurts someone, and nobody can tell which one is meant",
                f"add one of {', '.join(names)}",
            )
