"""A `hook_up` that is no power state, or is of no use, or that is missing: the `do` lines clip on,
take out, or open something, and `when` has the engine turning.

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

Fix: Write the power state in which the `do` lines are done, another one than `when` names. Nothing
is done before the reading? Then there is nothing to hook up, and no `hook_up`.
"""

import re
from collections.abc import Iterator

from builder.model.checks import Check
from builder.model.conditions import POWER, Condition, Conditions, CountsAs
from builder.model.finding import Finding, Severity
from builder.model.text import Text
from builder.model.tree import Step
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="hook-up",
    family=Family.STATES,
    severity=Severity.ERROR,
    summary="A `hook_up` that is no power state, is of no use, or is missing.",
)
AT_THE_ENGINE = re.compile(
    r"(?:^|, )(?:clip \w+ (?:to|on)|screw the|hook up (?!the scan)|hook the|tee in|tie the|fit a"
    r"|plug the [\w ]+ into|put the [\w ]+ in place|move the gauge|take the [\w ]+ out)\b",
    re.IGNORECASE,
)
IN_A_FUEL_LINE = re.compile(r"\brelieve (?:the )?pressure\b", re.IGNORECASE)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every `hook_up` that the walk can't tell, or needn't."""
    for step in facts.steps:
        if step.hook_up:
            yield from _wrong(step, step.hook_up, facts.conditions())
        elif step.do and step.needs and isinstance(step.body, Check):
            yield from _missing(step, facts.conditions())


def _missing(step: Step, conditions: Conditions) -> Iterator[Finding]:
    """Yield a finding where leads are clipped on beside a belt that runs, or a line is opened."""
    power = next((one for need in step.needs if (one := _power(need.condition, conditions))), None)
    normal = next((name for name, one in conditions.items()
                   if one.group == POWER and one.normal), None)  # fmt: skip
    if power is None or normal is None or power.normal or power.counts_as is CountsAs.POWER_OFF:
        return
    signs = AT_THE_ENGINE if power.starts_engine else IN_A_FUEL_LINE
    line = next((line for line in step.do if signs.search(line)), None)
    if line:
        yield RULE.finding(
            line.at,
            f"`{step.id}` has no `hook_up`, so this is done with `{power.id}`",
            "the tech reaches past a belt that runs" if power.starts_engine
            else "a line is opened while its pump may start",
            f"add `hook_up: {normal}` to `{step.id}`: then it's turned on after these lines",
        )  # fmt: skip


def _power(name: Text, conditions: Conditions) -> Condition | None:
    one = conditions.get(name)
    return one if one and one.group == POWER else None


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
                           "the same thing is told twice",
                           "write the state in which the `do` lines are done; if it's "
                           f"`{power}`, leave `hook_up` out")  # fmt: skip
    elif not step.do:
        yield RULE.finding(hook_up.at, f"`{step.id}` has no `do` lines",
                           "the tech turns everything off and on again for nothing",
                           "write in `do` what is hooked up; if nothing is, leave it out",
                           )  # fmt: skip
