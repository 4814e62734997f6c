"""An engine that runs with no exhaust hose, an engine that turns with no chocks at the wheels, or a
parking brake that is released with none.

The shop says in `kb/conditions.yml` in which states the hose is hooked up and the wheels are
chocked. Where a step holds none of them on a path, and no state that rules them out, it's named.

Why: The walk tells the tech what the states say, and no more: exhaust fills the bay, or the vehicle
rolls.

Wrong:

    # kb/hazards.yml
    exhaust-gas:
      signal: WARNING
      hazard: Exhaust holds carbon monoxide, which has no smell
      harm: It kills
      avoid: Use the exhaust hose
    # kb/conditions.yml
    key-off: {group: power, normal: yes, text: key off, enter: Turn the key off}
    engine-running:
      group: power
      starts_engine: yes
      text: engine running
      enter: Start the engine
      hazards: [exhaust-gas]
    hose-on: {text: exhaust hose on, enter: Hook up the exhaust hose, undo: Remove the exhaust hose}
    # trees/charging/case.yml
    steps:
      idle:
        check: Is the idle smooth?
        when: [engine-running]
        results: {yes: all-good, no: repair}

Right:

    # kb/hazards.yml
    exhaust-gas:
      signal: WARNING
      hazard: Exhaust holds carbon monoxide, which has no smell
      harm: It kills
      avoid: Use the exhaust hose
    # kb/conditions.yml
    key-off: {group: power, normal: yes, text: key off, enter: Turn the key off}
    engine-running:
      group: power
      starts_engine: yes
      text: engine running
      enter: Start the engine
      hazards: [exhaust-gas]
    hose-on: {text: exhaust hose on, enter: Hook up the exhaust hose, undo: Remove the exhaust hose}
    # trees/charging/case.yml
    steps:
      idle:
        check: Is the idle smooth?
        when: [hose-on, engine-running]
        results: {yes: all-good, no: repair}

Fix: Add the state to `when`. A new one that hooks up the hose or chocks the wheels says so in its
`enter`.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from builder.graph.vehicle_states import States
from builder.model.conditions import POWER, Condition
from builder.model.finding import Finding, Severity
from builder.model.tree import Step
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="not-secured",
    family=Family.STATES,
    severity=Severity.WARNING,
    summary="An engine that runs with no exhaust hose or chocks, or a brake released with none.",
)
BRAKE_RELEASED = re.compile(r"\bbrake (?:is )?(?:released|off)\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class _Guard:
    """What keeps a danger away, and the words by which states and cautions tell of it."""

    word: str  # in `enter` of a state
    hazard: re.Pattern[str]  # of a power state that needs it
    why: str


HOSE = _Guard("exhaust hose", re.compile(r"\bcarbon monoxide\b", re.I),
              "the exhaust stays in the bay: carbon monoxide has no smell, and kills")  # fmt: skip
CHOCKS = _Guard("chock", re.compile(r"\bvehicle can move\b", re.I),
                "the vehicle can roll, and nobody is told to chock it")  # fmt: skip


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every step that lacks its guard on a path."""
    running = _running(facts)
    asking = {step.id for step in facts.steps if _runs(step, running)}
    asking |= {step.id for step in facts.steps if BRAKE_RELEASED.search(step.text)}
    paths = facts.paths() if asking else None
    if paths is None:
        return
    told: set[str] = set()
    for place, entry in paths.entries.items():
        if not place.calls and place.step in asking and place.step not in told:
            for finding in _of_step(facts, entry.step, entry.states, running):
                told.add(place.step)
                yield finding


def _running(facts: Facts) -> dict[str, list[_Guard]]:
    """Return the power states in which the engine turns, each with the guards that it asks for."""
    powers = [one for one in facts.library.conditions.values()
              if one.group == POWER and one.starts_engine]  # fmt: skip
    return {str(one.id): [guard for guard in (HOSE, CHOCKS) if _has_hazard(facts, one, guard)]
            for one in powers}  # fmt: skip


def _runs(step: Step, running: dict[str, list[_Guard]]) -> list[_Guard]:
    return next((running[need.condition] for need in step.needs if need.condition in running), [])


def _of_step(
    facts: Facts, step: Step, states: States, running: dict[str, list[_Guard]]
) -> Iterator[Finding]:
    conditions = facts.conditions()
    holding = [conditions[state.condition] for state in states]
    power = next((one for one in holding if one.group == POWER), None)
    asked = _runs(step, running)
    for guard in asked or (CHOCKS,):
        if any(_tells(one, guard) for one in holding):
            continue
        guards = [one for one in conditions.values() if one.group != POWER and _tells(one, guard)]
        possible = [one for one in guards if not _ruled_out(one, holding)]
        if possible:
            used = [one for one in possible if _is_used(facts, one)] or possible
            names = " or ".join(f"`{one.id}`" for one in used)
            what = f"is in `{power.id}`" if asked and power else "has the brake released"
            yield RULE.finding(step.text.at, f"`{step.id}` {what} without {names}", guard.why,
                               f"add {names} to `when`")  # fmt: skip
            return


def _is_used(facts: Facts, one: Condition) -> bool:
    """Whether a step of the tree names a state."""
    return any(need.condition == one.id for step in facts.steps for need in step.needs)


def _has_hazard(facts: Facts, power: Condition, guard: _Guard) -> bool:
    known = (facts.library.hazards.get(name) for name in power.hazards)
    return any(guard.hazard.search(one.hazard) for one in known if one)


def _tells(one: Condition, guard: _Guard) -> bool:
    return any(guard.word in line.casefold() for line in one.enter)


def _ruled_out(one: Condition, holding: list[Condition]) -> bool:
    return any(one.id in other.excludes or other.id in one.excludes for other in holding)
