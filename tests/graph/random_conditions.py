"""Conditions files at random, as sound as the check demands, and states that a step may need.

In: hypothesis' draws. Out: conditions by id, and needs that can hold together.
"""

from collections.abc import Iterator
from dataclasses import replace
from itertools import permutations

from hypothesis import strategies as st

from builder.model.conditions import Condition, CountsAs, Takes, VehicleState
from builder.model.text import Number, Text

from .vehicle_by_hand import Kinds, clash, every_state, normal_of, replaced

POWER = ("off", "on", "running", "no battery")


def condition(name: str, **words: object) -> Condition:
    """Make a condition that can be told."""
    told = {"enter": (Text(f"Enter {name}"),), "minutes": Number("1")}
    return Condition(id=Text(name), **(told | words))  # type: ignore[arg-type]


@st.composite
def conditions_files(draw, plain: bool) -> dict[str, Condition]:
    """Draw a file; in a plain one all can be changed in the normal power state, as in a shop's."""
    keys = POWER[: draw(st.integers(2, 4))]
    made = {
        key: condition(
            key, group=Text("power"), normal=key == "off",
            counts_as=CountsAs.POWER_OFF if key == "no battery" else None,
        )
        for key in draw(st.permutations(keys))
    }  # fmt: skip
    for number in range(draw(st.integers(1, 2))):
        made |= draw(groups(f"group {number}", keys, plain))
    of_loads = draw(lists_of(keys, plain))  # a part carries one load: they are as of one group
    for number in range(draw(st.integers(0, 2))):
        takes = draw(st.sampled_from([None, Takes.PART, Takes.CURRENT]))
        name, own = f"alone {number}", draw(lists_of(keys, plain))
        listed = of_loads if takes is Takes.CURRENT else own
        made[name] = condition(name, takes=takes, changed_with=listed)
    for one, other in draw(st.lists(pairs_of(made), max_size=12)):
        more = (*made[one].excludes, Text(other))
        with_it = made | {one: replace(made[one], excludes=more)}
        if is_sound_file(with_it, plain):
            made = with_it
    return made


@st.composite
def lists_of(draw, keys: tuple[str, ...], plain: bool) -> tuple[Text, ...]:
    """Draw the power states in which something may be changed; none for any."""
    listed = draw(st.permutations(keys))[: draw(st.integers(0, 2))]
    add_normal = plain and listed and "off" not in listed
    return tuple(map(Text, [*listed, *(["off"] if add_normal else [])]))


@st.composite
def groups(draw, name: str, keys: tuple[str, ...], plain: bool) -> dict[str, Condition]:
    """Draw a group, whose states share a power state in which they may be changed."""
    takes = draw(st.sampled_from([None, Takes.PART]))
    shared = draw(lists_of(keys, plain))
    made = {}
    for number in range(draw(st.integers(2, 3))):
        more = tuple(key for key in draw(lists_of(keys, plain)) if key not in shared)
        own = draw(st.sampled_from([(), shared, (*shared, *more), (*more, *shared)]))
        id_, listed = f"{name} state {number}", own if shared else ()
        made[id_] = condition(
            id_, group=Text(name), normal=number == 0, takes=takes, changed_with=listed
        )
    return made


def pairs_of(made: Kinds) -> st.SearchStrategy[tuple[str, str]]:
    """Draw one condition that is to exclude another."""
    return st.tuples(st.sampled_from(list(made)), st.sampled_from(list(made)))


def is_sound_file(made: Kinds, plain: bool) -> bool:
    """Whether every state can be entered and left, whatever else holds."""
    pairs = [
        (one, other) for one, other in permutations(made.values(), 2)
        if other.id in one.excludes or one.id in other.excludes
    ]  # fmt: skip
    rests = [(one, other) for one, other in pairs if other.normal]
    return (
        all(one.id not in one.excludes for one in made.values())
        and all(may_exclude(made, one, other, plain) for one, other in pairs)
        and is_acyclic({(str(one.group or one.id), str(other.group)) for one, other in rests})
        and not any(
            key in one.changed_with and kind.group == other.group and (made[key], kind) in pairs
            for one, other in rests for kind in made.values() for key in made
        )
    )  # fmt: skip


def may_exclude(made: Kinds, one: Condition, other: Condition, plain: bool) -> bool:
    """Whether the check lets one condition exclude another, and the vehicle can be worked on."""
    if same_place(one, other) or (one.normal and other.normal):
        return False
    if other.normal and other.takes and not one.takes:
        return False
    if other.group != "power":
        return True
    lists = [(kind is one or same_place(kind, one), kind.changed_with) for kind in made.values()]
    listed = any(other.id in keys for own, keys in lists if own or one.normal)
    return not listed and not (plain and other.normal)


def same_place(one: Condition, other: Condition) -> bool:
    """Whether one of the two at a time holds, of a group or as the load of a part."""
    loads = one.takes is Takes.CURRENT and other.takes is Takes.CURRENT
    return loads or (one.group is not None and one.group == other.group)


def is_acyclic(arrows: set[tuple[str, str]]) -> bool:
    """Whether no state waits, by way of others, for itself."""
    while leaves := {to for _, to in arrows} - {start for start, _ in arrows}:
        arrows = {arrow for arrow in arrows if arrow[1] not in leaves}
    return not arrows


@st.composite
def needs_of(draw, kinds: Kinds) -> list[VehicleState]:
    """Draw states that a step may need at the same time."""
    states = list(every_state(kinds))
    chosen: list[VehicleState] = []
    for state in draw(st.lists(st.sampled_from(states), min_size=2, max_size=6)):
        goes = not any(clash(kinds, state, one) for one in chosen)
        if goes and replaced(kinds, tuple(chosen), state) is None:
            chosen.append(state)
    while missing := next(unnamed(kinds, chosen), None):
        state, normal = missing
        instead = [
            one for one in states
            if one != normal and replaced(kinds, (normal,), one) == normal
            and not any(clash(kinds, one, other) for other in chosen)
        ]  # fmt: skip
        if instead:
            chosen.insert(draw(st.integers(0, len(chosen))), draw(st.sampled_from(instead)))
        else:
            chosen.remove(state)
    return chosen


def unnamed(kinds: Kinds, needs: list[VehicleState]) -> Iterator[tuple[VehicleState, VehicleState]]:
    """Yield a need that excludes a normal state, while no other of that group is needed."""
    for state in needs:
        for one in every_state(kinds):
            named = replaced(kinds, tuple(needs), one)
            if normal_of(kinds, one) == one and clash(kinds, state, one) and named is None:
                yield state, one
