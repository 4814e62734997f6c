"""What always holds on a walk, on random walks through every tree of the test shop."""

import json
from dataclasses import replace
from random import Random
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.walk.events import Answer, Back, Correct, Event, Pause
from builder.walk.job_state import JobState, RecordedStep, Refused
from builder.walk.record import record_of
from builder.walk.reduce import reduce_event, replay
from builder.walk.screen import screen
from builder.walk.walk_tables import WalkTables
from tests.walk.random_walks import (
    events_of,
    random_event,
    random_state,
    random_walk,
)

walks = st.tuples(st.integers(0, 10_000), st.integers(0, 50), st.integers(0, 40))
many = settings(max_examples=50, deadline=None)


def state_at(tables: WalkTables, walk: tuple[int, int, int]) -> tuple[JobState, Random]:
    """Return where a random walk is, and the source of more random numbers."""
    seed, tree, length = walk
    random, trees = Random(seed), list(tables.trees)
    return random_state(tables, trees[tree % len(trees)], random, length), random


def next_event(tables: WalkTables, state: JobState, random: Random) -> Event:
    """Draw one more event."""
    return random_event(tables, state, next(iter(tables.trees)), random, "2026-11-29T20:00:00Z")


def bare(state: JobState) -> JobState:
    """Return a state without what is kept of the events that were undone."""
    return replace(state, events=(), struck=(), before=None)


def measured(state: JobState) -> set[str]:
    """Return all readings and notes of a record, those struck out among them."""
    rows = record_of(state)
    return {
        json.dumps([one["in"], one["step"], one["readings"], one.get("wrote")])
        for one in (*rows["steps"], *rows["struck"])
        if one["readings"] or one.get("wrote")
    }


@many
@given(walk=walks)
def test_back_undoes_exactly_the_last_event(tables: WalkTables, walk: tuple[int, int, int]) -> None:
    """After an event and `back` the walk is where it was, but for what is kept as struck out."""
    state, random = state_at(tables, walk)
    event = next_event(tables, state, random)
    following = reduce_event(tables, state, event)
    if isinstance(following, JobState) and not isinstance(event, Back | Correct):
        undone = reduce_event(tables, following, Back())
        assert isinstance(undone, JobState)
        assert bare(undone) == bare(state)
        assert undone.before == state.before


@many
@given(walk=walks)
def test_a_correction_is_undone_too(tables: WalkTables, walk: tuple[int, int, int]) -> None:
    """`back` after `correct` brings back the steps as they were."""
    state, _ = state_at(tables, walk)
    for index in range(len(state.steps)):
        corrected = reduce_event(tables, state, Correct(index=index, result=0, stated=True))
        if isinstance(corrected, JobState) and corrected is not state:
            undone = reduce_event(tables, corrected, Back())
            assert isinstance(undone, JobState)
            assert bare(undone) == bare(state)


@many
@given(walk=walks)
def test_a_record_played_again_is_the_same(tables: WalkTables, walk: tuple[int, int, int]) -> None:
    """The events of a record, through JSON, give the same record and the same screen."""
    state, _ = state_at(tables, walk)
    record = json.loads(json.dumps(record_of(state)))
    again = replay(tables, events_of(record["events"]))
    assert isinstance(again, JobState)
    assert json.loads(json.dumps(record_of(again))) == record
    assert screen(tables, again) == screen(tables, state)


@many
@given(walk=walks)
def test_an_answer_corrected_to_itself_changes_nothing(
    tables: WalkTables, walk: tuple[int, int, int]
) -> None:
    """The same answer again is the same walk, to the last field."""
    state, _ = state_at(tables, walk)
    for index, entry in enumerate(state.steps):
        event = state.done[entry.event] if entry.event >= 0 else None
        if isinstance(event, Answer) and not state.paused:
            same = Correct(
                index=index, result=event.result, readings=event.readings, stated=event.stated
            )
            assert reduce_event(tables, state, same) is state


@many
@given(walk=walks)
def test_nothing_measured_is_lost(tables: WalkTables, walk: tuple[int, int, int]) -> None:
    """Whatever happens next, every reading and every note stays in the record."""
    state, random = state_at(tables, walk)
    for _ in range(10):
        following = reduce_event(tables, state, next_event(tables, state, random))
        if isinstance(following, JobState):
            assert measured(state) <= measured(following)
            state = following


@many
@given(walk=walks)
def test_a_walk_has_ended_or_can_be_paused(tables: WalkTables, walk: tuple[int, int, int]) -> None:
    """There is no state in which a job can't be put down."""
    state, _ = state_at(tables, walk)
    if state.tree and not state.paused:
        assert isinstance(reduce_event(tables, state, Pause()), JobState)


@many
@given(walk=walks)
def test_a_refusal_says_why(tables: WalkTables, walk: tuple[int, int, int]) -> None:
    """An event that doesn't fit comes back with a message; states are values, nothing changes."""
    state, random = state_at(tables, walk)
    before = json.dumps(record_of(state))
    for _ in range(5):
        event = next_event(tables, state, random)
        following = reduce_event(tables, state, event)
        if isinstance(following, Refused):
            assert len(following.message) > 10
        assert json.dumps(record_of(state)) == before


@many
@given(walk=walks)
def test_the_steps_of_a_record_follow_from_each_other(
    tables: WalkTables, walk: tuple[int, int, int]
) -> None:
    """Every step of the record was made by an event that holds, in that order."""
    state, _ = state_at(tables, walk)
    made = [entry.event for entry in state.steps if entry.event >= 0]
    assert made == sorted(set(made))
    assert all(isinstance(entry, RecordedStep) for entry in state.steps)
    assert len(state.done) <= len(state.events)


@pytest.mark.parametrize("seed", range(3))
def test_a_random_walk_is_the_same_each_time(tables: WalkTables, seed: int) -> None:
    """The cross-check for the page's script can be made again."""
    for tree in tables.trees:
        first: dict[str, Any] = random_walk(tables, tree, Random(f"{seed} {tree}"))
        assert first == random_walk(tables, tree, Random(f"{seed} {tree}"))
        assert json.loads(json.dumps(first["record"])) == first["record"]
