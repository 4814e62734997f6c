"""Drills on the simulated vehicle: an oracle for the tree, the tables and the reducer at once."""

from pathlib import Path
from random import Random

import pytest

from builder.walk.drill import auto_drill, right_event, simulated_answer
from builder.walk.events import Answer, Start
from builder.walk.job_state import JobState, is_over
from builder.walk.practice import what_is_seen
from builder.walk.reduce import reduce_event
from builder.walk.simulated_vehicle import SimulatedVehicle
from builder.walk.told import row_of
from builder.walk.walk_tables import WalkTables
from tests.walk.conftest import SAMPLES, SHOP, tables_of

FIXES = [
    pytest.param(shop, tree, step, id=f"{tree}#{step}")
    for shop in (SHOP, SAMPLES)
    for tree, table in tables_of(shop).trees.items()
    for step, row in table["steps"].items()
    if row["kind"] == "fix"
]


def drilled(tables: WalkTables, tree: str, fault: str, seed: int = 1) -> JobState:
    """Return where a drill ended that had to end at the fault."""
    vehicle = SimulatedVehicle(tables, tree, fault, Random(seed))
    state = auto_drill(tables, vehicle, Start(tree=tree))
    assert isinstance(state, JobState)
    assert vehicle.is_at_fault(state), (state.end, [one.result for one in state.steps])
    return state


@pytest.mark.parametrize(("shop", "tree", "fault"), FIXES)
def test_every_fix_is_reached(shop: Path, tree: str, fault: str) -> None:
    """A vehicle with that fault leads to that fix; each test after the repair passes."""
    state = drilled(tables_of(shop), tree, fault)
    assert state.end
    assert state.end.verified is not None
    assert not any(entry.stated or entry.result == "failed" for entry in state.steps)
    if state.end.verified:
        assert state.steps[-1].result == "passed"


def test_fixes_of_generated_trees_are_reached(generated: Path) -> None:
    """So is one fix of each tree of a shop that nobody wrote by hand."""
    tables = tables_of(generated)
    for tree, table in tables.trees.items():
        fixes = [id_ for id_, row in table["steps"].items() if row["kind"] == "fix"]
        drilled(tables, tree, Random(tree).choice(fixes))


@pytest.mark.parametrize(("shop", "tree", "fault"), FIXES[::5])
def test_the_same_seed_is_the_same_drill(shop: Path, tree: str, fault: str) -> None:
    """Teacher and apprentice see the same readings."""
    tables = tables_of(shop)
    first, again = (drilled(tables, tree, fault, seed=7).steps for _ in range(2))
    assert first == again


def test_a_check_shows_the_same_each_time() -> None:
    """Who looks twice at the same step reads the same."""
    tables = tables_of(SAMPLES)
    tree = "charging/lamp-on"
    vehicle = SimulatedVehicle(tables, tree, "alternator-fix", Random(3))
    state = reduce_event(tables, JobState(), Start(tree=tree, enter="running"))
    assert isinstance(state, JobState)
    choice = vehicle.choice_at(state)
    assert choice == vehicle.choice_at(state)
    shown = simulated_answer(tables, vehicle, state, choice)
    assert shown == simulated_answer(tables, vehicle, state, choice)
    assert isinstance(shown, Answer)
    assert shown.readings
    assert row_of(tables, state.frames[-1])["results"][choice.result]["text"] == "below spec"


@pytest.mark.parametrize(("shop", "tree", "fault"), FIXES[::3])
def test_a_look_never_fails(shop: Path, tree: str, fault: str) -> None:
    """At each step something is shown: where a value is looked up, too, and after the repair."""
    tables = tables_of(shop)
    vehicle = SimulatedVehicle(tables, tree, fault, Random(5))
    state, asked = reduce_event(tables, JobState(), Start(tree=tree)), 0
    while isinstance(state, JobState) and not is_over(state):
        assert what_is_seen(tables, vehicle, state)
        state, asked = reduce_event(tables, state, right_event(tables, vehicle, state)), asked + 1
    assert isinstance(state, JobState)
    assert asked
