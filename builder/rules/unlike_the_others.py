"""A step that lacks what all steps like it in its tree have: it removes the same part and nothing
is put back, it uses the same tool without its DANGER, it has the engine turning without a state
such as the chocks, or it repairs in the same state, or the same part, and isn't proved as the
others are.

Why: What was left out is what the tech relies on: a caution, the way back, the proof.

Wrong:

    lamp:
      check: Remove the panel, is the lamp good?
      put_back: Install the panel
      results: {yes: wire, no: repair}
    wire:
      check: Is the wire good?
      do: [Remove the panel]
      results: {yes: switch, no: repair}
    switch:
      check: Is the switch good?
      do: [Remove the panel]
      put_back: Install the panel
      results: {yes: all-good, no: repair}

Right:

    lamp:
      check: Remove the panel, is the lamp good?
      put_back: Install the panel
      results: {yes: wire, no: repair}
    wire:
      check: Is the wire good?
      do: [Remove the panel]
      put_back: Install the panel
      results: {yes: switch, no: repair}
    switch:
      check: Is the switch good?
      do: [Remove the panel]
      put_back: Install the panel
      results: {yes: all-good, no: repair}

Fix: Add what the others have, or say in other words what is different here.
"""

import re
from collections import defaultdict
from collections.abc import Iterator

from builder.model.conditions import POWER
from builder.model.ends import Fix
from builder.model.finding import Finding, Related, Severity
from builder.model.knowledge import Signal
from builder.model.tree import Step
from builder.rules.shared.passing import passing_results
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="unlike-the-others",
    family=Family.UPKEEP,
    severity=Severity.WARNING,
    summary="A step that lacks what all steps like it have.",
)
REMOVES = re.compile(r"(?:remove|take off|take out|unbolt)\b", re.IGNORECASE)
FEW = 2  # that have it, for a caution
MANY = 3  # that have it, for a proof


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every step that is the only one of its like to lack something."""
    yield from _not_put_back(facts)
    yield from _without_danger(facts)
    yield from _without_state(facts)
    yield from _other_proof_of_a_state(facts)
    yield from _other_proof_of_a_part(facts)


def _not_put_back(facts: Facts) -> Iterator[Finding]:
    same: dict[str, list[Step]] = defaultdict(list)
    for step in facts.steps:
        for line in {step.text, *step.do} if not isinstance(step.body, Fix) else ():
            if REMOVES.match(line):
                same[str(line)].append(step)
    for removed, steps in same.items():
        having = [step for step in steps if step.put_back]
        for step in steps if having else ():
            if not step.put_back:
                other = having[0]
                yield RULE.finding(
                    step.text.at,
                    f"`{step.id}` says `{removed}`, and has no `put_back`",
                    "what was removed here stays off, as nobody is told to install it",
                    f"write `put_back: {other.put_back}`, as `{other.id}` has it",
                    _like(other),
                )


def _without_danger(facts: Facts) -> Iterator[Finding]:
    hazards = facts.library.hazards
    using: dict[str, list[Step]] = defaultdict(list)
    for step in facts.steps:
        for tool in step.tools:
            using[str(tool)].append(step)
    told: set[tuple[str, str]] = set()
    for used, steps in using.items():
        named = dict.fromkeys(str(name) for step in steps for name in step.hazards)
        for name in named:
            danger = hazards.get(name)
            lacking = _one_without(steps, [s for s in steps if name in s.hazards], FEW)
            if (
                danger
                and danger.signal is Signal.DANGER
                and lacking
                and (lacking.id, name) not in told
            ):
                told.add((str(lacking.id), name))
                yield RULE.finding(
                    lacking.text.at,
                    f"`{lacking.id}` uses `{used}` without `hazards: [{name}]`, which the other "
                    f"{len(steps) - 1} steps with it have",
                    "on this step the tech isn't warned of what kills",
                    f"add `hazards: [{name}]`",
                )


def _without_state(facts: Facts) -> Iterator[Finding]:
    """Yield where only one step with the engine turning lacks a state, such as the chocks.

    A step in a state that none of the others is in, such as on the lift, is not like them.
    """
    conditions = facts.conditions() if any(step.needs for step in facts.steps) else {}
    running: dict[str, list[Step]] = defaultdict(list)
    for step in facts.steps:
        for need in step.needs if not isinstance(step.body, Fix) else ():
            condition = conditions.get(str(need.condition))
            if condition and condition.starts_engine:
                running[str(condition.id)].append(step)
    for power, steps in running.items():
        for name in dict.fromkeys(name for step in steps for name in _states(step)):
            condition = conditions.get(name)
            having = [step for step in steps if name in _states(step)]
            lacking = _one_without(steps, having, FEW)
            if not lacking or not condition or condition.group or condition.takes:
                continue
            if not {*_states(lacking)} - {one for step in having for one in _states(step)}:
                yield RULE.finding(
                    lacking.text.at,
                    f"`{lacking.id}` has `{power}` without `{name}`, which the other "
                    f"{len(having)} steps with it have",
                    "unless a step before happens to set it, the tech isn't told",
                    f"add `{name}` to `when`",
                    _like(having[0]),
                )


def _states(step: Step) -> list[str]:
    return [str(need.condition) for need in step.needs]


def _one_without(steps: list[Step], having: list[Step], enough: int) -> Step | None:
    """Return the only step that isn't among those that have something."""
    lacking = [step for step in steps if step not in having]
    return lacking[0] if len(lacking) == 1 and len(having) >= enough else None


def _other_proof_of_a_state(facts: Facts) -> Iterator[Finding]:
    """Yield where only one fix in a state isn't proved by the procedure of the others."""
    conditions = facts.conditions() if any(step.needs for step in facts.steps) else {}
    fixes: dict[str, list[Step]] = defaultdict(list)
    for step in facts.steps:
        for need in step.needs if isinstance(step.body, Fix) else ():
            condition = conditions.get(str(need.condition))
            if condition and condition.group != POWER:
                fixes[str(condition.id)].append(step)
    told: set[tuple[str, str]] = set()
    for state, steps in sorted(fixes.items(), key=lambda one: len(one[1])):  # what is like it most
        for name in dict.fromkeys(name for step in steps for name in _procedures(facts, step)):
            having = [step for step in steps if name in _procedures(facts, step)]
            lacking = _one_without(steps, having, MANY)
            if lacking and (str(lacking.id), name) not in told:
                told.add((str(lacking.id), name))
                yield RULE.finding(
                    lacking.text.at,
                    f"`{lacking.id}` isn't proved by `{name}`, as the other {len(having)} fixes "
                    f"with `when: [{state}]` are",
                    "the vehicle leaves without the test that this work asks for",
                    f"add `{name}` to `verify`",
                )


def _procedures(facts: Facts, fix: Step) -> list[str]:
    assert isinstance(fix.body, Fix)
    names = (str(one.text) for one in fix.body.verify)
    return [name for name in names if name in facts.library.procedures]


def _other_proof_of_a_part(facts: Facts) -> Iterator[Finding]:
    """Yield where one fix of a part is proved in words alone, and another one by a check."""
    fixes: dict[str, list[Step]] = defaultdict(list)
    for step in facts.steps:
        for part in step.body.parts if isinstance(step.body, Fix) else ():
            if str(part.part) in step.text:
                fixes[str(part.part)].append(step)
    for sold, steps in fixes.items():
        measured = [step for step in steps if _checks(facts, step)]
        for step in steps if measured else ():
            if not (_checks(facts, step) or _procedures(facts, step)):
                named = " and ".join(f"`{name}`" for name in _checks(facts, measured[0]))
                yield RULE.finding(
                    step.text.at,
                    f"`{step.id}` is proved in words alone, and `{measured[0].id}`, the same "
                    f"{sold}, by a check",
                    "the customer pays for a part with no measurement before or after",
                    f"name the check that found it in `verify`; `{measured[0].id}` has {named}",
                    _like(measured[0]),
                )


def _checks(facts: Facts, fix: Step) -> list[str]:
    assert isinstance(fix.body, Fix)
    return [str(one.text) for one in fix.body.verify if passing_results(facts, one)]


def _like(step: Step) -> Related:
    return Related(step.text.at, f"`{step.id}`, which is like it")
