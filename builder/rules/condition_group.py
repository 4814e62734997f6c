"""A group of conditions without a normal state or with two, or whose states don't belong together.

Why: At the end of a job every group goes back to normal. Without one normal state in each, the
vehicle is left raised, open or unplugged, and nobody is told.

Wrong:

    # kb/conditions.yml
    on-the-ground:
      group: height
      text: on its wheels
      enter: Lower it
    raised:
      group: height
      text: raised on the lift
      enter: Raise it

Right:

    # kb/conditions.yml
    on-the-ground:
      group: height
      normal: yes
      text: on its wheels
      enter: Lower it
    raised:
      group: height
      text: raised on the lift
      enter: Raise it

Fix: Write `normal: yes` under the one state that a vehicle comes in and leaves with. All states of
a group take the same: a part, or nothing. A load is on or off, and power states have no
`changed_with`.
"""

import re
from collections import Counter
from collections.abc import Iterator
from datetime import date
from itertools import groupby

from builder.graph.sound_conditions import sound_conditions
from builder.model.conditions import POWER, Condition, Takes
from builder.model.finding import Finding, Related, Severity, edit_of
from builder.model.library import Library
from builder.model.typing_slip import slip_of
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="condition-group",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A group of conditions without one normal state, or whose states don't go together.",
)
LEFT_OPEN = "at the end of a job nobody is told what to put back"
ONE_AT_A_TIME = "one state of a group holds at a time"


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield what is wrong with the groups, and with conditions that should have none."""
    conditions = sound_conditions(library)
    for one in conditions:
        yield from _id(one)
        yield from _alone(one) if not one.group else _in_group(one)
    groups = Counter(str(one.group) for one in conditions if one.group)
    meant = {group: _meant(group, groups) for group in groups}
    for one in conditions:
        if one.group and (other := meant[one.group]) != one.group:
            yield RULE.finding(one.group.at, f"only `{one.id}` is in the group `{one.group}`",
                               LEFT_OPEN, f"did you mean `{other}`?",
                               edit=edit_of(one.group, other))  # fmt: skip
    grouped = sorted((meant[str(one.group)], number) for number, one in enumerate(conditions)
                     if one.group)  # fmt: skip
    for group, numbered in groupby(grouped, key=lambda pair: pair[0]):
        yield from _of_group(group, [conditions[number] for _, number in numbered])


def _meant(group: str, groups: Counter[str]) -> str:
    """Return the group of which this one, with one state alone, is a slip; else itself."""
    others = [other for other, states in groups.items() if states > 1]
    return (groups[group] == 1 and slip_of(group, others)) or group


def _id(one: Condition) -> Iterator[Finding]:
    slug = re.sub(r"[^a-z0-9]+", "-", one.id.lower()).strip("-")
    if one.id != slug:
        yield RULE.finding(one.id.at, f"`{one.id}` can't be the name of a condition",
                           "a step reads it as free text, and the state never holds",
                           f"use small letters, digits and `-`: `{slug or 'key-off'}`")  # fmt: skip


def _alone(one: Condition) -> Iterator[Finding]:
    if one.normal:
        yield RULE.finding(one.id.at, f"`{one.id}` is normal, but has no group",
                           "without a group a state is on or off, and off is normal",
                           "delete `normal`, or name its group")  # fmt: skip


def _in_group(one: Condition) -> Iterator[Finding]:
    assert one.group
    if one.takes is Takes.CURRENT:
        yield RULE.finding(one.group.at, f"`{one.id}` takes a current and has a group",
                           "a load is on or off at each part", "delete `group`")  # fmt: skip
    if one.also_say == one.group:
        yield RULE.finding(one.also_say.at, f"`{one.id}` is in the group `{one.group}` itself",
                           f"{ONE_AT_A_TIME}, and a step with `{one.id}` has named it",
                           "delete `also_say`, or name another group")  # fmt: skip
    if one.group == POWER and one.takes:
        yield RULE.finding(one.group.at, f"the power state `{one.id}` takes a {one.takes}",
                           "the vehicle has one key and one battery", "delete `takes`")  # fmt: skip
    if one.group == POWER and one.changed_with:
        yield RULE.finding(one.changed_with[0].at, f"the power state `{one.id}` has `changed_with`",
                           "the key can't wait for itself",
                           "delete it; write in `enter` what to turn first")  # fmt: skip


def _of_group(group: str, states: list[Condition]) -> Iterator[Finding]:
    first, *others = states
    normal = [one for one in states if one.normal]
    if not normal:
        yield RULE.finding(first.id.at, f"no state of the group `{group}` is normal", LEFT_OPEN,
                           "write `normal: yes` under the one a vehicle comes in with")  # fmt: skip
    for other in normal[1:]:
        yield RULE.finding(other.id.at, f"`{normal[0].id}` and `{other.id}` are both normal",
                           f"{ONE_AT_A_TIME}; {LEFT_OPEN}", "delete `normal` under one of them",
                           Related(normal[0].id.at, "the first normal state"))  # fmt: skip
    for other in others:
        currents = [one for one in (first, other) if one.takes is Takes.CURRENT]
        if other.takes is not first.takes and not currents:
            yield RULE.finding(other.id.at, f"{_taking(first)}, {_taking(other)}, in one group",
                               LEFT_OPEN, "write the same `takes` under all states of a group",
                               Related(first.id.at, "the first of the group"))  # fmt: skip


def _taking(one: Condition) -> str:
    return f"`{one.id}` takes {'a part' if one.takes else 'nothing'}"
