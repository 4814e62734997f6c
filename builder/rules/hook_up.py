"""A `hook_up` that is no power state, or is of no use.

Why: What is clipped on with the engine off and read with it running is told in three parts: turn it
off, clip on, start it. Without a power state to begin with, the tech reaches past a running belt.

Wrong:

    steps:
      ripple:
        check: Does the scope show ripple at the battery?
        when: [engine-running]
        hook_up: engine-running
        do: [Clip the leads on]
        results:
          - {result: yes, branch: repair}
          - {result: no, branch: all-good}

Right:

    steps:
      ripple:
        check: Does the scope show ripple at the battery?
        when: [engine-running]
        hook_up: key-off
        do: [Clip the leads on]
        results:
          - {result: yes, branch: repair}
          - {result: no, branch: all-good}

Fix: Write the power state in which the `do` lines are done, another one than `when` names; or
delete `hook_up`.
"""

from collections.abc import Iterator

from builder.model.conditions import POWER, Conditions
from builder.model.finding import Finding, Severity
from builder.model.text import Text
from builder.model.tree import Step
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="hook-up",
    family=Family.STATES,
    severity=Severity.ERROR,
    summary="A `hook_up` that is no power state, or is of no use.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every `hook_up` that the walk can't tell, or needn't."""
    for step in facts.steps:
        if step.hook_up:
            yield from _wrong(step, step.hook_up, facts.conditions())


def _wrong(step: Step, hook_up: Text, conditions: Conditions) -> Iterator[Finding]:
    one = conditions.get(hook_up)
    if one is None:  # `no-such-state` says so
        return
    if one.group != POWER:
        powers = [f"`{name}`" for name, other in conditions.items() if other.group == POWER]
        yield RULE.finding(hook_up.at, f"`{hook_up}` isn't a power state",
                           "the tech hooks up in whatever state the last step left",
                           f"use one of {', '.join(powers)}")  # fmt: skip
        return
    wanted = [need.condition for need in step.needs if need.condition in conditions]
    power = next((name for name in wanted if conditions[name].group == POWER), None)
    if power is None:
        yield RULE.finding(hook_up.at, f"`{step.id}` hooks up with `{hook_up}` and names no power "
                           "state to read in", "the tech can't tell what to turn on after it",
                           "add the power state to `when`")  # fmt: skip
    elif power == hook_up:
        yield RULE.finding(hook_up.at, f"`{step.id}` needs `{power}` anyway",
                           "the same thing is told twice", "delete `hook_up`")  # fmt: skip
    elif not step.do:
        yield RULE.finding(hook_up.at, f"`{step.id}` has no `do` lines",
                           "the tech turns everything off and on again for nothing",
                           "write in `do` what is hooked up, or delete `hook_up`")  # fmt: skip
