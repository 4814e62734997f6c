"""A step that needs two states which can't hold at the same time, or one that excludes a normal
state of a group of which the step names nothing.

Why: Nobody can get the vehicle into both. The walk would send a tech from one to the other.

Wrong:

    steps:
      drop:
        check: Measure voltage drop, battery positive to sense pin
        when: [key-on, {loaded: 2 A}]
        at: {part: alternator, pins: [sense]}
        reading: {unit: V, from: 0, to: 16, resolution: 0.01, origin: common practice}
        results:
          - {result: at most 0.2, branch: all-good}
          - {result: above 0.2, branch: repair}

Right:

    steps:
      drop:
        check: Measure voltage drop, battery positive to sense pin
        when: [key-on, {unplugged: alternator}, {loaded: 2 A}]
        at: {part: alternator, pins: [sense]}
        reading: {unit: V, from: 0, to: 16, resolution: 0.01, origin: common practice}
        results:
          - {result: at most 0.2, branch: all-good}
          - {result: above 0.2, branch: repair}

Fix: Delete one of the two, or make two steps of it. Where a state excludes a normal one, name the
other state of that group too.
"""

from collections.abc import Iterator
from datetime import date

from builder.graph.sound_conditions import conditions_for
from builder.graph.vehicle_states import at_odds, place_of
from builder.model.conditions import Conditions, VehicleState
from builder.model.finding import Finding, Related, Severity
from builder.model.library import Library
from builder.model.tree import Need
from builder.rules.shared.named_needs import (
    NamedNeeds,
    needs_of_modules,
    needs_of_steps,
)
from builder.rules.shared.part_hint import is_part
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="states-at-odds",
    family=Family.STATES,
    severity=Severity.ERROR,
    summary="A step needs two states that can't hold at the same time.",
)
WHY = "nobody can get the vehicle into both"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every pair of states that a step needs and that can't be."""
    for named in needs_of_steps(facts):
        yield from _pairs(named, facts.conditions(), facts.library)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every such pair in a module's record."""
    for named in needs_of_modules(library):
        yield from _pairs(named, conditions_for(library), library)


def _pairs(named: NamedNeeds, conditions: Conditions, library: Library) -> Iterator[Finding]:
    needs = {state: need for need, state in named.states(conditions)}
    for one, other in at_odds(conditions, needs):
        if other in needs:
            yield _clash(conditions, needs, one, other)
        elif _may_be_part(other.part, library):  # else `no-such-part` says so
            yield _group_left_out(conditions, needs[one], one, other)


def _may_be_part(name: str | None, library: Library) -> bool:
    return not name or name[0] == "<" or is_part(name, library)


def _clash(
    conditions: Conditions, needs: dict[VehicleState, Need], one: VehicleState, other: VehicleState
) -> Finding:
    same = place_of(conditions, one) == place_of(conditions, other)
    reason = "are states of one group" if same else "exclude each other"
    return RULE.finding(needs[other].condition.at, f"{written(one)} and {written(other)} {reason}",
                        WHY, "make two steps of it, or name only the one in which the work is done",
                        *_exclusions(conditions, one, other))  # fmt: skip


def _group_left_out(
    conditions: Conditions, need: Need, one: VehicleState, normal: VehicleState
) -> Finding:
    group = conditions[normal.condition].group
    others = [
        written(VehicleState(name, normal.part))
        for name, other in conditions.items()
        if other.group == group and not other.normal
        and one.condition not in other.excludes
        and name not in conditions[one.condition].excludes
    ]  # fmt: skip
    return RULE.finding(need.condition.at, f"{written(one)} excludes {written(normal)}, "
                        "and nothing here says what holds instead", WHY,
                        f"add {' or '.join(others)}" if others else "delete it",
                        *_exclusions(conditions, one, normal))  # fmt: skip


def _exclusions(
    conditions: Conditions, one: VehicleState, other: VehicleState
) -> Iterator[Related]:
    """Yield the places where a state excludes another: the mistake may be there."""
    pair = {one.condition, other.condition}
    for name in sorted(pair):
        for excluded in conditions[name].excludes:
            if str(excluded) in pair - {name}:
                yield Related(excluded.at, f"`{name}` excludes `{excluded}`; correct this line if "
                              "the vehicle can be in both")  # fmt: skip


def written(state: VehicleState) -> str:
    """Return a state as an author writes it."""
    value = state.value or state.part
    return f"`{{{state.condition}: {value}}}`" if value else f"`{state.condition}`"
