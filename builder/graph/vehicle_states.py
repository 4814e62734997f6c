"""Which states of a vehicle hold, and which can't hold together.

In: the shop's conditions, and the states that hold. Out: answers for the planner and the rules. A
state holds in a place: of a group one state holds at a time, of a part one state of its group and
one load.
"""

from collections.abc import Iterable, Iterator
from itertools import combinations

from builder.model.conditions import POWER, Condition, Conditions, Takes, VehicleState

States = tuple[VehicleState, ...]  # those that aren't normal, in the order they were entered
Place = tuple[str, str, str]  # what is of one kind there, its name, and the part


def place_of(conditions: Conditions, state: VehicleState) -> Place:
    """Return the place in which a state holds. Raises KeyError where there is no such condition."""
    condition = conditions[state.condition]
    if condition.group:
        return "group", str(condition.group), state.part
    if condition.takes is Takes.CURRENT:
        return "load", "", state.part
    return "alone", str(condition.id), state.part


def holds(conditions: Conditions, now: States, state: VehicleState) -> bool:
    """Whether a state holds; a normal one does as long as no other of its group does."""
    if not conditions[state.condition].normal:
        return state in now
    place = place_of(conditions, state)
    return all(place_of(conditions, one) != place for one in now)


def normal_state(conditions: Conditions, state: VehicleState) -> VehicleState | None:
    """Return the normal state of a state's group, at its part; None where it is on or off."""
    group = conditions[state.condition].group
    if group is None:
        return None
    normal = (one for one in conditions.values() if one.normal and one.group == group)
    return next((VehicleState(str(one.id), state.part) for one in normal), None)


def power_state(conditions: Conditions, now: States) -> VehicleState | None:
    """Return the power state that holds; None where the shop has no group `power`."""
    for state in now:
        if conditions[state.condition].group == POWER:
            return state
    normal = (one for one in conditions.values() if one.normal and one.group == POWER)
    return next((VehicleState(str(one.id)) for one in normal), None)


def excludes(conditions: Conditions, one: VehicleState, other: VehicleState) -> bool:
    """Whether two states exclude each other; if each is of a part, only at the same part."""
    first, second = conditions[one.condition], conditions[other.condition]
    if second.id not in first.excludes and first.id not in second.excludes:
        return False
    return not (first.takes and second.takes) or one.part == other.part


def in_the_way(conditions: Conditions, now: States, state: VehicleState) -> States:
    """Return the states that hold and that a state excludes, normal ones among them."""
    normal = (one for one in _normals_excluded(conditions, state) if holds(conditions, now, one))
    return (*(one for one in now if excludes(conditions, state, one)), *normal)


def at_odds(
    conditions: Conditions, needed: Iterable[VehicleState]
) -> Iterator[tuple[VehicleState, VehicleState]]:
    """Yield the pairs because of which states can't be needed at the same time.

    Two of one place, two that exclude each other, or one that excludes a normal state while no
    other of that group is needed; then the normal state is the second of the pair.
    """
    wanted = tuple(dict.fromkeys(needed))
    places = {place_of(conditions, state) for state in wanted}
    for one, other in combinations(wanted, 2):
        same = place_of(conditions, one) == place_of(conditions, other)
        if same or excludes(conditions, one, other):
            yield one, other
    for state in wanted:
        for normal in _normals_excluded(conditions, state):
            if place_of(conditions, normal) not in places:
                yield state, normal


def _normals_excluded(conditions: Conditions, state: VehicleState) -> Iterator[VehicleState]:
    own = conditions[state.condition]
    for one in conditions.values():
        if one.normal and (one.id in own.excludes or own.id in one.excludes):
            yield VehicleState(str(one.id), _part(one, state))


def _part(normal: Condition, state: VehicleState) -> str:
    return state.part if normal.takes else ""
