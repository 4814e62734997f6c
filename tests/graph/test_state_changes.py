"""The planner against a vehicle that is worked on by hand, after the text of the format alone."""

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from builder.graph.change import Change
from builder.graph.state_changes import back_to_normal, changes
from builder.graph.vehicle_states import States, at_odds, holds
from builder.model.conditions import VehicleState

from .random_conditions import conditions_files, needs_of, unnamed
from .vehicle_by_hand import (
    Kinds,
    Vehicle,
    World,
    after_move,
    can_get_there,
    clash,
    every_state,
    is_allowed,
    is_sound,
    replaced,
)

ROUNDS = settings(
    max_examples=50, deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)  # fmt: skip
FILES = {"plain": conditions_files(plain=True), "any": conditions_files(plain=False)}


def moves_of(made: tuple[Change, ...]) -> list[tuple[VehicleState | None, VehicleState | None]]:
    """Return what each change leaves and enters."""
    return [(one.left, one.entered) for one in made]


def walked(kinds: Kinds, world: World, made: tuple[Change, ...]) -> tuple[World, bool]:
    """Make the changes one by one; return what holds then, and whether each was allowed."""
    sound = True
    for move in moves_of(made):
        assert move[0] is None or move[0] in world
        sound &= is_allowed(kinds, world, move)
        world = after_move(kinds, world, move)
    return world, sound


@ROUNDS
@given(st.data())
def test_the_planner_changes_what_the_four_rules_change(data: st.DataObject) -> None:
    """Change for change, in the same order, over a whole job and back to normal."""
    kinds = data.draw(FILES["plain"])
    vehicle, now = Vehicle(kinds), ()
    for needs in data.draw(st.lists(needs_of(kinds), min_size=1, max_size=5)):
        vehicle.moves = []
        vehicle.prepare(needs)
        made, now = changes(kinds, now, needs)
        assert moves_of(made) == vehicle.moves
        assert list(now) == vehicle.order


@ROUNDS
@given(st.data(), st.sampled_from(sorted(FILES)))
def test_every_change_is_allowed_when_it_is_made(data: st.DataObject, form: str) -> None:
    """Needed states hold, no two ever exclude each other, and the key is where it must be.

    Unless no order of changes gets there, which a search over all orders has to show.
    """
    kinds = data.draw(FILES[form])
    now: States = ()
    world = Vehicle(kinds).world
    for needs in data.draw(st.lists(needs_of(kinds), min_size=1, max_size=4)):
        made, now = changes(kinds, now, needs)
        after, allowed = walked(kinds, world, made)
        if not allowed:
            assert form == "any"
            assert not can_get_there(kinds, world, needs)
            return
        world = after
        assert is_sound(kinds, world)
        assert set(needs) <= set(world)
        assert all(holds(kinds, now, one) for one in world)


@ROUNDS
@given(st.data(), st.sampled_from(sorted(FILES)))
def test_nothing_is_done_twice(data: st.DataObject, form: str) -> None:
    """No state is entered twice for one step, and the same needs again change nothing."""
    kinds = data.draw(FILES[form])
    now: States = ()
    for needs in data.draw(st.lists(needs_of(kinds), min_size=1, max_size=4)):
        made, now = changes(kinds, now, needs)
        entered = [one.entered for one in made if one.entered and not is_power(kinds, one.entered)]
        left = [one.left for one in made if one.left and not is_power(kinds, one.left)]
        assert len(entered) == len(set(entered))
        assert len(left) == len(set(left))
        if all(holds(kinds, now, one) for one in needs):
            assert changes(kinds, now, needs) == ((), now)


def is_power(kinds: Kinds, state: VehicleState) -> bool:
    """Whether a state is one of the key, the engine or the battery."""
    return kinds[state.condition].group == "power"


@ROUNDS
@given(st.data(), st.sampled_from(sorted(FILES)))
def test_at_the_end_everything_is_normal(data: st.DataObject, form: str) -> None:
    """What was unplugged, raised or hooked up is put back, each only while it may be."""
    kinds = data.draw(FILES[form])
    now, normal = (), Vehicle(kinds).world
    world = normal
    for needs in data.draw(st.lists(needs_of(kinds), min_size=1, max_size=4)):
        made, now = changes(kinds, now, needs)
        world, sound = walked(kinds, world, made)
        if not sound:
            return
    made, left = back_to_normal(kinds, now)
    world, sound = walked(kinds, world, made)
    assert sound
    assert left == ()
    assert set(world) == set(normal)


@ROUNDS
@given(st.data(), st.sampled_from(sorted(FILES)))
def test_what_the_next_test_needs_may_stay(data: st.DataObject, form: str) -> None:
    """All else is normal then, each changed only while it may be."""
    kinds = data.draw(FILES[form])
    now: States = ()
    world = Vehicle(kinds).world
    for needs in data.draw(st.lists(needs_of(kinds), min_size=1, max_size=4)):
        made, now = changes(kinds, now, needs)
        world, sound = walked(kinds, world, made)
        if not sound:
            return
    wanted = data.draw(needs_of(kinds))
    kept = tuple(one for one in now if one in wanted)
    if any(at_odds(kinds, kept)):
        return
    made, left = back_to_normal(kinds, now, kept)
    assert walked(kinds, world, made)[1]
    assert set(left) == set(kept)


@ROUNDS
@given(st.data())
def test_needs_that_exclude_each_other_come_to_an_end(data: st.DataObject) -> None:
    """A step that nobody can carry out is a finding elsewhere; here it ends, and does no harm."""
    kinds = data.draw(FILES["any"])
    states = st.lists(st.sampled_from(list(every_state(kinds))), max_size=4, unique=True)
    now: States = ()
    for needs in data.draw(st.lists(states, max_size=4)):
        _, now = changes(kinds, now, needs)
    assert back_to_normal(kinds, now)[1] == ()


@ROUNDS
@given(st.data(), st.sampled_from(sorted(FILES)))
def test_what_cannot_be_needed_together_is_told(data: st.DataObject, form: str) -> None:
    """Two of one place, two that exclude each other, a normal state excluded and not replaced."""
    kinds = data.draw(FILES[form])
    states = st.lists(st.sampled_from(list(every_state(kinds))), max_size=4, unique=True)
    needs = data.draw(states)
    pairs = [(a, b) for n, a in enumerate(needs) for b in needs[n + 1 :]]
    against = [
        (a, b) for a, b in pairs if clash(kinds, a, b) or replaced(kinds, (a,), b) is not None
    ]
    assert set(at_odds(kinds, needs)) == {*against, *unnamed(kinds, needs)}
    assert list(at_odds(kinds, data.draw(needs_of(kinds)))) == []
