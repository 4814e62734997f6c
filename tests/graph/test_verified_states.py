"""In which states a repair is verified, and a walk resumed: worked examples over the samples."""

from pathlib import Path

import pytest

from builder.check.unchecked_library import read_library
from builder.graph.moves import Place
from builder.graph.tree_paths import paths_of
from builder.graph.vehicle_paths import VehiclePaths
from builder.model.library import Library
from builder.reader.source import Source
from builder.reader.trees import tree_from

SAMPLES = Path(__file__).parents[1] / "samples"
TREE = """\
title: Pump does not run
symptom: [no pump]
steps:
  pump:
    check: Is the pump dry?
    when: [key-off, {unplugged: alternator}]
    results: {yes: pump-fix, no: other}
  lamp:
    check: Is the lamp off?
    when: [engine-running]
    after: [noise]
    results: {yes: pump, no: pump}
  noise:
    check: Is it quiet?
    when: [loads-on]
    results: {yes: lamp, no: lamp}
  other:
    check: Is it hot?
    results: {yes: charging/overcharge, no: lamp}
  pump-fix:
    fix: Replace the pump
    cause: It is worn
    when: [raised, key-off]
    verify: [{pump: no}, {lamp: yes}]
"""


@pytest.fixture(scope="module")
def library() -> Library:
    """Return the samples' library."""
    return read_library(SAMPLES)[0]


@pytest.fixture(scope="module")
def paths(library: Library) -> VehiclePaths:
    """Return the paths of the tree."""
    tree, _ = tree_from(Source("trees/charging/pump.yml", TREE, ""))
    assert tree
    found = paths_of(tree, library, ())
    assert found
    return found


def states_at(paths: VehiclePaths, step: str, *, verifying: bool) -> set[frozenset[str]]:
    """Return the states in which a walk arrives at a step, by their conditions."""
    places = (one for one in paths.moves_from if one.step == step and bool(one.calls) == verifying)
    return {frozenset(one.condition for one in place.states) for place in places}


def test_each_verification_begins_in_normal_state(paths: VehiclePaths) -> None:
    """The second doesn't find unplugged what the first unplugged."""
    assert states_at(paths, "pump", verifying=True) == {frozenset()}
    assert states_at(paths, "noise", verifying=True) == {frozenset()}


def test_what_comes_before_a_check_leaves_its_states_to_it(paths: VehiclePaths) -> None:
    """The steps in `after` belong to the same verification."""
    assert states_at(paths, "lamp", verifying=True) == {frozenset({"loads-on"})}


def test_a_failed_verification_goes_on_from_the_states_that_it_left(paths: VehiclePaths) -> None:
    """To the first check that verifies: with the connector still unplugged, or the engine on."""
    failed = states_at(paths, "pump", verifying=False)
    assert frozenset({"unplugged"}) in failed
    assert frozenset({"loads-on", "engine-running"}) in failed


def test_a_walk_resumes_in_normal_state_where_it_handed_off(paths: VehiclePaths) -> None:
    """The step is reached with the connector unplugged, and again from the other tree."""
    arrivals = states_at(paths, "other", verifying=False)
    assert {frozenset(), frozenset({"unplugged"})} <= arrivals
    assert paths.path_to(Place("other")) == (Place("other"),)
    assert paths.starts == (Place("pump"),)


def test_a_fix_puts_back_what_it_needs_itself(paths: VehiclePaths) -> None:
    """The lift is lowered and the connector plugged in before anything is verified."""
    fixes = [one for place, one in paths.entries.items() if place.step == "pump-fix"]
    assert fixes
    for entry in fixes:
        left = {change.left.condition for change in entry.back if change.left}
        assert {"raised", "unplugged"} <= left
