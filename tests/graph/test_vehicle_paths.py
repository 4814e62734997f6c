"""The states along every path against walks that are made by hand."""

from itertools import pairwise

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from builder.graph.moves import Place
from builder.graph.run_frames import PathKnowledge
from builder.graph.step_entry import Planner
from builder.graph.vehicle_paths import VehiclePaths, vehicle_paths
from builder.model.procedures import Procedure
from builder.model.tree import Tree

from .random_conditions import conditions_files
from .random_walkable_trees import walkable
from .vehicle_by_hand import Kinds
from .walk_by_hand import MOST, At, Bay

ROUNDS = settings(
    max_examples=30, deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)  # fmt: skip
PLAIN = conditions_files(plain=True)


def paths_of(tree: Tree, procedures: dict[str, Procedure], kinds: Kinds) -> VehiclePaths:
    """Follow the paths of a tree."""
    return vehicle_paths(tree, PathKnowledge(Planner(kinds), procedures))


def seen(at: At) -> tuple[object, ...]:
    """Return where a walk by hand is, without its counts."""
    return at.running, at.step, at.before, at.vehicle


def followed(place: Place) -> tuple[object, ...]:
    """Return the same of a place of the paths."""
    calls = tuple(
        (call.step, -1 if call.verification is None else call.verification) for call in place.calls
    )
    return calls, place.step, place.caller or "", place.states


@ROUNDS
@given(st.data())
def test_every_step_is_entered_in_the_states_of_a_walk_and_no_others(data: st.DataObject) -> None:
    """Through procedures, verifications, ways back, and what can't be tested."""
    kinds = data.draw(PLAIN)
    tree, procedures = data.draw(walkable(kinds, counted=False))
    by_hand = {seen(at) for at in Bay(tree, procedures, kinds).arrivals()}
    paths = paths_of(tree, procedures, kinds)
    if len(by_hand) < MOST and paths.whole:
        assert {followed(place) for place in paths.moves_from} == by_hand


@ROUNDS
@given(st.data())
def test_no_walk_is_left_out_where_steps_are_used_up(data: st.DataObject) -> None:
    """How often a step was done isn't counted, so there may be more, never fewer."""
    kinds = data.draw(PLAIN)
    tree, procedures = data.draw(walkable(kinds, counted=True))
    by_hand = {seen(at) for at in Bay(tree, procedures, kinds).arrivals()}
    paths = paths_of(tree, procedures, kinds)
    if paths.whole:
        assert by_hand <= {followed(place) for place in paths.moves_from}


@ROUNDS
@given(st.data())
def test_the_path_to_a_step_is_one_that_a_walk_can_take(data: st.DataObject) -> None:
    """A finding shows it: each place follows from the one before it."""
    kinds = data.draw(PLAIN)
    tree, procedures = data.draw(walkable(kinds, counted=True))
    paths = paths_of(tree, procedures, kinds)
    for place in paths.moves_from:
        path = paths.path_to(place)
        assert path[0] in paths.starts
        for one, after in pairwise(path):
            assert after in {move.to for move in paths.moves_from[one]}
