"""What is put back once a repair is done, and the states in which it is verified."""

from random import Random

from hypothesis import given, settings
from hypothesis import strategies as st

from builder.check.unchecked_library import read_library
from builder.reader.source import Source
from builder.reader.trees import tree_from
from builder.walk.compile_shop import walk_tables
from builder.walk.compile_tree import tree_table
from builder.walk.screen import screen
from builder.walk.told import begins_test, needed, own_put_back, plan_of, row_of
from builder.walk.walk_tables import WalkTables
from tests.walk.conftest import SAMPLES
from tests.walk.played import lines_told, place, started, typed
from tests.walk.random_walks import random_state

TREE = "charging/lamp-on"
walks = st.tuples(st.integers(0, 10_000), st.integers(0, 60))


def test_a_fix_tells_the_repair_then_what_to_put_back_then_the_tests(samples: WalkTables) -> None:
    """So the customer's vehicle is tested, and not one with a load on."""
    state = typed(samples, started(samples, TREE, enter="ripple"), "0.9 V")
    assert place(state) == f"{TREE}#inside-fix"
    shown = screen(samples, state)
    kinds = [line["of"] for line in shown["lines"]]
    assert kinds == sorted(kinds, key=["change", "do", "after", "put back"].index)
    assert "Reconnect and tighten the negative cable last" in lines_told(shown, "put back")
    assert len(shown["tests"]) == len(row_of(samples, state.frames[-1])["verify"])
    assert all(" " in text for text in shown["tests"])


def test_once_a_repair_is_done_all_is_normal(samples: WalkTables) -> None:
    """Nothing that a check before the repair has left holds in its verification."""
    state = typed(samples, started(samples, TREE, enter="ripple"), "0.9 V")
    assert state.now
    state = typed(samples, state, "done")
    assert state.now == ()
    assert state.put_back == ()


def test_a_test_keeps_what_it_needs_itself(samples: WalkTables) -> None:
    """The engine isn't stopped and started again between two tests with it running."""
    state = typed(samples, started(samples, TREE, enter="ripple"), "0.9 V", "done", "0.1 V")
    lines = screen(samples, state).get("lines", [])
    assert state.verifying == 1
    assert {line["of"] for line in lines} <= {"put back", "do"}
    assert "Turn the key off" not in lines_told(screen(samples, state), "put back")


def test_a_test_in_words_is_done_on_the_vehicle_as_it_leaves(samples: WalkTables) -> None:
    """It tells what the test before it left, and not the repair again."""
    state = typed(samples, started(samples, TREE, enter="ripple"), "0.9 V", "done", "0.1 V", "2")
    shown = screen(samples, state)
    assert shown["phase"] == "verify"
    assert {line["of"] for line in shown["lines"]} == {"put back"}
    assert typed(samples, state, "pass").now == ()


def test_a_failed_test_goes_on_from_the_states_that_it_left(samples: WalkTables) -> None:
    """The engine still runs where the same check comes next."""
    state = typed(samples, started(samples, TREE, enter="belt"), "2", "done", "12.1 V")
    assert place(state) == f"{TREE}#running"
    assert "engine-running" in {one.condition for one in state.now}
    assert not state.to_normal


@settings(max_examples=100, deadline=None)
@given(walk=walks)
def test_a_test_begins_with_what_it_needs_and_nothing_else(
    samples: WalkTables, walk: tuple[int, int]
) -> None:
    """On random walks; what was taken apart in words is told first."""
    seed, length = walk
    random = Random(seed)
    state = random_state(samples, random.choice(list(samples.trees)), random, length)
    if not state.frames or not begins_test(state) or screen(samples, state)["phase"] != "step":
        return
    row, frame = row_of(samples, state.frames[-1]), state.frames[-1]
    normal = {id_ for id_, one in samples.conditions.items() if one.normal}
    plan = plan_of(samples, state)
    needs = {one for one in needed(row, frame) if one.condition not in normal}
    assert set(plan.states) == needs
    assert set(state.put_back) <= {*plan.put_back, *own_put_back(samples, frame)}


OFF = """
title: Idles rough
drive: yes
why: Nothing can fail.
symptom: [rough]
steps:
  spark:
    check: Is there a spark?
    when: [secured, engine-running]
    put_back: Remove the spark tester
    results: {yes: hose, no: one}
  hose:
    check: Is the hose clear?
    when: [key-on]
    put_back: Install the hose
    results: {yes: again, no: one}
  again:
    check: Does it run well?
    when: [engine-running]
    results: {yes: one, no: one}
  one: {fix: Replace it, cause: Bad, when: [key-off], verify: [again]}
"""


def test_what_was_taken_off_goes_on_before_the_engine_starts() -> None:
    """With the key off where it was on, told before the start, and once."""
    library = read_library(SAMPLES)[0]
    tree, findings = tree_from(Source("trees/engine/rough.yml", OFF, ""))
    assert tree is not None
    assert findings == ()
    tables = walk_tables(library, {"engine/rough": tree_table(tree, library)})
    state = typed(tables, started(tables, "engine/rough"), "yes")
    assert lines_told(screen(tables, state), "put back") == []
    assert state.put_back == ("Remove the spark tester",)
    state = typed(tables, state, "yes")
    shown = screen(tables, state)
    assert lines_told(shown, "put back") == ["Remove the spark tester", "Install the hose"]
    lines = [line["text"] for line in shown["lines"]]
    assert lines.index("Install the hose") < lines.index("Start the engine")
    assert typed(tables, state, "yes").put_back == ()


def test_what_was_taken_apart_goes_together_before_the_battery_is_connected(
    samples: WalkTables,
) -> None:
    """A step's own line comes first, then the states that it was done in are left."""
    state = typed(samples, started(samples, "network/module-silent", enter="fuse"), "eps-module")
    own = row_of(samples, state.frames[-1])["put_back"]
    state = typed(samples, state, "2")
    assert place(state).endswith("#short-fix")
    first, *others = lines_told(screen(samples, state), "put back")
    assert first == own
    assert any("EPS module" in line for line in others)


def test_nothing_is_put_together_with_the_key_on(samples: WalkTables) -> None:
    """Where a walk ends with the key on or the engine running, that comes first."""
    state = started(samples, "network/module-silent", enter="fuse")
    state = typed(samples, state, "eps-module", "can't test")
    off, own, *_ = lines_told(screen(samples, state), "put back")
    assert off == "Turn the key off"
    assert own == "Plug in everything else on this fuse"
