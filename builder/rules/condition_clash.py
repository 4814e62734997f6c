"""Conditions that could never be entered or left, because of what they exclude.

Why: The walk would send a tech from one state into another that is ruled out, and back again.

Wrong:

    # kb/conditions.yml
    key-off:
      group: power
      normal: yes
      text: key off
      enter: Turn the key off
    key-on:
      group: power
      excludes: [key-off]
      text: key on
      enter: Turn the key on

Right:

    # kb/conditions.yml
    key-off:
      group: power
      normal: yes
      text: key off
      enter: Turn the key off
    key-on:
      group: power
      text: key on
      enter: Turn the key on

Fix: Exclude only states of other groups, and never a normal one by a normal one. List in
`changed_with` power states that neither it nor another of its group excludes.
"""

from collections.abc import Iterator
from datetime import date
from itertools import combinations

import networkx as nx

from builder.graph.sound_conditions import sound_conditions
from builder.model.conditions import POWER, Condition, Conditions, Takes
from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.text import Text
from builder.model.typing_slip import slip_of
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="condition-clash",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="Conditions that could never be entered or left, because of what they exclude.",
)
STUCK = "there is no way into it or out of it"


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield what conditions exclude in vain, and what keeps one from being changed."""
    conditions = {str(one.id): one for one in sound_conditions(library)}
    for one in conditions.values():
        for name in one.excludes:
            if name in conditions:
                yield from _excluded(one, name, conditions[name])
        for name in one.changed_with:
            if name in conditions:
                yield from _changed_with(one, name, conditions)
    for one, other in combinations(conditions.values(), 2):
        if _same_place(one, other) and conditions.keys() >= {
            *one.changed_with,
            *other.changed_with,
        }:
            yield from _nothing_in_common(one, other)
    yield from _rings(conditions)


def _same_place(one: Condition, other: Condition) -> bool:
    """Whether one of two holds at a time: of a group, or as the load of a part."""
    loads = one.takes is Takes.CURRENT and other.takes is Takes.CURRENT
    return loads or (one.group is not None and one.group == other.group)


def _excluded(one: Condition, name: Text, other: Condition) -> Iterator[Finding]:
    if one.id == other.id:
        yield RULE.finding(
            name.at,
            f"`{one.id}` excludes itself",
            STUCK,
            "write the other state that was meant, or leave it out",
        )
    elif _same_place(one, other):
        yield RULE.finding(name.at, f"`{other.id}` is of the same group as `{one.id}`",
                           "one state of a group holds at a time, that is enough",
                           "leave it out: the group says it already")  # fmt: skip
    elif one.normal and other.normal:
        yield RULE.finding(name.at, f"`{one.id}` and `{other.id}` are both normal",
                           "a vehicle comes in with both of them",
                           "exclude another state of the group")  # fmt: skip
    else:
        for first, second in ((one, other), (other, one)):
            if first.normal and first.takes and not second.takes:
                yield RULE.finding(name.at, f"`{second.id}` rules out `{first.id}` of every part",
                                   "no step can change all parts of a vehicle",
                                   "exclude another state of the group")  # fmt: skip


def _changed_with(one: Condition, name: Text, conditions: Conditions) -> Iterator[Finding]:
    power = conditions[name]
    if power.group and slip_of(power.group, (POWER,)) and power.group != POWER:
        return  # a slip in the group's name, and reported there
    if power.group != POWER:
        powers = [f"`{id_}`" for id_, other in conditions.items() if other.group == POWER]
        hint = f"use one of {', '.join(powers)}" if powers else "put it into the group `power`"
        yield RULE.finding(name.at, f"`{name}` isn't a power state",
                           "the walk turns the key to what is listed here", hint)  # fmt: skip
        return
    for other in conditions.values():
        if (other is one or _same_place(other, one)) and _exclude(other, power):
            yield RULE.finding(name.at, f"`{one.id}` is changed with `{name}`, and `{other.id}` "
                               "excludes that", STUCK,
                               f"take `{name}` out of `excludes` or out of `changed_with`: "
                               "only one of the two is right")  # fmt: skip


def _exclude(one: Condition, other: Condition) -> bool:
    return other.id in one.excludes or one.id in other.excludes


def _nothing_in_common(one: Condition, other: Condition) -> Iterator[Finding]:
    if one.changed_with and other.changed_with and not {*one.changed_with} & {*other.changed_with}:
        yield RULE.finding(other.changed_with[0].at,
                           f"`{one.id}` and `{other.id}` have no power state in common",
                           f"to go from one to the other changes both; {STUCK}",
                           f"write one of `{one.changed_with[0]}` here too")  # fmt: skip


def _rings(conditions: Conditions) -> Iterator[Finding]:
    """Yield the states that wait for each other: each wants the other's group changed first."""
    waits = {
        (str(one.group or one.id), str(other.group)): one
        for one in conditions.values() for other in conditions.values()
        if other.normal and not one.normal and _exclude(one, other)
    }  # fmt: skip
    groups: nx.DiGraph[str] = nx.DiGraph()
    groups.add_edges_from(waits)
    for ring in nx.strongly_connected_components(groups):
        states = [one for (start, end), one in waits.items() if {start, end} <= ring]
        if len(ring) > 1:
            first, *others = sorted(states, key=lambda one: one.id.at)
            waiting = ", ".join(f"`{one.id}`" for one in others)
            yield RULE.finding(first.id.at, f"`{first.id}` and {waiting} wait for each other: each "
                               "excludes the normal state of the other's group", STUCK,
                               "delete one of the exclusions")  # fmt: skip
