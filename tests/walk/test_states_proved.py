"""The walk and the check agree: no walk comes to a step in states that the paths don't have.

`graph/vehicle_paths.py` follows all paths of a tree from the model, `walk/` follows one from the
tables; neither uses the other.
"""

from random import Random

import pytest

from builder.check.unchecked_library import read_library
from builder.graph.run_frames import PathKnowledge
from builder.graph.step_entry import planner_of
from builder.graph.vehicle_paths import vehicle_paths
from builder.model.library import Library, entered_at
from builder.reader.trees import read_tree
from builder.walk.events import Answer, CannotTest, Event, RunProcedure, Start
from builder.walk.job_state import JobState, Refused
from builder.walk.reduce import reduce_event
from builder.walk.screen import screen
from builder.walk.walk_tables import WalkTables
from tests.walk.conftest import SAMPLES, tables_of
from tests.walk.random_walks import fitting_event

Arrival = tuple[str, str, frozenset[tuple[str, str, str]]]  # file, step, states
TREES = [tree for tree, table in tables_of(SAMPLES).trees.items() if len(table["steps"]) > 5]


@pytest.fixture(scope="module")
def library() -> Library:
    """Return the samples' library."""
    return read_library(SAMPLES)[0]


def proved(library: Library, id_: str) -> set[Arrival]:
    """Return every step with the states in which the check has it reached."""
    tree, _ = read_tree(SAMPLES, SAMPLES / library.listings[id_].file)
    assert tree
    planner = planner_of(tuple(library.conditions.values()))
    known = PathKnowledge(planner, library.procedures, library.modules)
    paths = vehicle_paths(tree, known, entered_at(library, id_))
    assert paths.whole
    steps = {place: paths.entries[place].step for place in paths.moves_from}
    return {
        (step.at.file, str(step.id), frozenset(tuple(one) for one in place.states))
        for place, step in steps.items()
    }


def arrivals(tables: WalkTables, tree: str, random: Random) -> list[Arrival]:
    """Return the steps of a random walk with the states in which it comes to them."""
    state = reduce_event(tables, JobState(), Start(tree=tree))
    met: list[Arrival] = []
    for _ in range(60):
        assert isinstance(state, JobState)
        phase = screen(tables, state)["phase"]
        if phase == "end" or state.left:
            return met
        if phase == "step":
            met.append(_arrival(state))
        following = reduce_event(tables, state, _event(tables, state, random))
        state = state if isinstance(following, Refused) else following
    return met


def _arrival(state: JobState) -> Arrival:
    frame = state.frames[-1]
    folder = "kb/" if frame.inside.startswith("procedures/") else "trees/"
    asked = {value: f"<{name}>" for name, value in state.frames[0].filled.items()}
    now = () if state.to_normal else state.now  # what isn't normal is put back first
    states = frozenset((one, asked.get(part, part), value) for one, part, value in now)
    return f"{folder}{frame.inside}.yml", frame.step, states


def _event(tables: WalkTables, state: JobState, random: Random) -> Event:
    """Draw an event; what is only stated isn't followed by the check."""
    event = fitting_event(tables, state, random, "")
    if isinstance(event, Answer) and event.stated:
        return RunProcedure() if "procedure" in screen(tables, state) else CannotTest()
    return CannotTest() if isinstance(event, Answer) and random.random() < 0.1 else event


@pytest.mark.parametrize("tree", TREES)
def test_a_walk_meets_only_states_that_were_proved(library: Library, tree: str) -> None:
    """A hundred random walks, through procedures, verifications and what can't be tested."""
    tables, known = tables_of(SAMPLES), proved(library, tree)
    met = 0
    for seed in range(100):
        for arrival in arrivals(tables, tree, Random(f"{tree} {seed}")):
            assert arrival in known, (seed, arrival)
            met += 1
    assert met >= 100
