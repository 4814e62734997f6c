"""A draft made from a job is sound as a draft, and walked again it goes the way of the job."""

from datetime import date
from functools import cache
from pathlib import Path
from random import Random
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.authoring.source_steps import SourceTrees
from builder.authoring.tree_of_path import tree_of_path
from builder.authoring.walked_path import path_of_record
from builder.check.unchecked_library import read_library
from builder.model.finding import Severity
from builder.model.library import Library
from builder.model.tree import Status, Tree
from builder.reader.record_file import record_mistake
from builder.reader.source import Source, decode
from builder.reader.trees import read_tree, tree_from
from builder.rules.shared.judge import judge
from builder.walk.compile_shop import walk_tables
from builder.walk.compile_tree import tree_table
from builder.walk.events import (
    Acknowledge,
    Answer,
    CannotTest,
    Done,
    Event,
    Fill,
    NoneOfThese,
    RunProcedure,
    Start,
    TakeEarlier,
    Verified,
)
from builder.walk.job_state import CANNOT_TEST, NONE_OF_THESE, JobState, RecordedStep
from builder.walk.record import record_of
from builder.walk.reduce import reduce_event
from builder.walk.screen import screen
from builder.walk.steps_taken import steps_taken
from builder.walk.told import row_of
from builder.walk.walk_tables import PROCEDURES, WalkTables
from tests.walk.random_walks import random_state

TESTS = Path(__file__).parents[1]
MADE = "horn/made"
TODAY = date(2026, 11, 29)
ODD: dict[str, Event] = {CANNOT_TEST: CannotTest(), NONE_OF_THESE: NoneOfThese(seen="as before")}


@cache
def shop_of(name: str) -> tuple[Library, dict[str, Tree], WalkTables]:
    """Return a shop of the tests with its trees and tables."""
    library, _ = read_library(TESTS / name)
    read = (read_tree(TESTS / name, TESTS / name / one.file)[0] for one in library.trees.values())
    trees = {tree.id: tree for tree in read if tree and not tree.broken}
    tables = {id_: tree_table(tree, library) for id_, tree in trees.items()}
    return library, trees, walk_tables(library, tables)


def draft_of(shop: str, record: dict[str, Any]) -> str:
    """Return the text of the draft of a record."""
    path = path_of_record(record)
    return tree_of_path(path, SourceTrees(TESTS / shop), shop_of(shop)[0], MADE, TODAY)


def made_from(shop: str, record: dict[str, Any]) -> Tree:
    """Return the draft of a record, in which nothing is an error."""
    library, text = shop_of(shop)[0], draft_of(shop, record)
    source = decode(f"trees/{MADE}.yml", text.encode())
    assert isinstance(source, Source)
    tree, findings = tree_from(source)
    assert tree, text
    errors = [one for one in (*findings, *judge(tree, library)) if one.severity is Severity.ERROR]
    assert not errors, (errors, text)
    assert tree.status is Status.DRAFT
    return tree


def done_before_success(state: JobState, tables: WalkTables) -> list[RecordedStep]:
    """Return what was done without tests of a repair, up to the first repair that held.

    The last step counts only if its answer was clear: where no way goes on, nothing hangs on it.
    """
    steps: list[RecordedStep] = []
    has_failed = True
    for one in steps_taken(tables, state):
        has_failed = has_failed or one.entry.result == "failed"
        if one.verifies:
            continue
        if not has_failed:
            break
        steps.append(one.entry)
        has_failed = one.entry.kind != "fix"
    return steps[:-1] if steps and steps[-1].too_close else steps


def walked_again(
    tables: WalkTables, first: JobState, expected: list[RecordedStep]
) -> list[RecordedStep]:
    """Return the steps of the draft walked with the answers of a job."""
    state = after(tables, JobState(), Start(tree=MADE, vehicle=first.vehicle))
    taken: list[RecordedStep] = []
    while len(taken) < len(expected):
        event = next_event(tables, state, first, expected[len(taken) :])
        state = after(tables, state, event)
        taken = [one.entry for one in steps_taken(tables, state) if not one.verifies]
    return taken


def after(tables: WalkTables, state: JobState, event: Event) -> JobState:
    """Return the next state."""
    following = reduce_event(tables, state, event)
    assert isinstance(following, JobState), (following, event, state.frames)
    return following


def next_event(
    tables: WalkTables, state: JobState, first: JobState, left: list[RecordedStep]
) -> Event:
    """Return what the job answered here; a test of a repair that didn't hold fails."""
    shown = screen(tables, state)
    if shown.get("asks"):
        name = shown["asks"][0]["name"]
        return Fill(name=name, value=first.filled[name])
    if shown.get("unread"):
        return Acknowledge(hazards=tuple(shown["unread"]))
    if state.verifying is not None:
        return Verified(passed=False) if shown["phase"] == "verify" else CannotTest()
    row, entry = row_of(tables, state.frames[-1]), left[0]
    if row["kind"] != "check":
        return ODD.get(entry.result, Done())
    if entry.result in ODD and not entry.inside.startswith(PROCEDURES):
        return ODD[entry.result]
    if (
        "by" in row
        and entry.inside.startswith(PROCEDURES)
        and (state.frames[-1].inside != entry.inside)
    ):
        return RunProcedure()
    if entry.earlier:
        return TakeEarlier()
    return answer_of(tables[entry.inside]["steps"][entry.step], entry)


def answer_of(row: Any, entry: RecordedStep) -> Event:
    """Return the answer that a check of the job was given."""
    if entry.result in ODD:
        return ODD[entry.result]
    result = [one["text"] for one in row["results"]].index(entry.result)
    typed = {name: one.typed for name, one in entry.readings.items() if one.typed}
    return Answer(result=result, readings=typed, stated=entry.stated)


def same_step(tables: WalkTables, was: RecordedStep, now: RecordedStep) -> bool:
    """Whether a step of the draft is the one of the job, left by the same answer."""
    if was.inside.startswith(PROCEDURES):
        return (was.inside, was.step, was.result) == (now.inside, now.step, now.result)
    name = now.step == was.step or now.step.startswith(f"{was.step}-")
    texts = [one["text"] for one in tables[was.inside]["steps"][was.step].get("results", ())]
    here = [one["text"] for one in tables[MADE]["steps"][now.step].get("results", ())]
    at = texts.index(was.result) if was.result in texts else None
    return name and now.result == (was.result if at is None else here[at])


TEXTS = st.text(st.characters(codec="utf-8", exclude_categories=("Cs", "Cn")), max_size=90)
PLACES = st.sampled_from(("charging/lamp-on", "horn/silent", "procedures/battery-proof", "../x"))
STEPS = st.sampled_from(("belt", "fuse", "battery", "back", "horn-fix", "next")) | TEXTS
RESULTS = st.sampled_from(("done", "good", "cannot test", "none of these", "anything else"))
ROWS = st.fixed_dictionaries({
    "in": PLACES,
    "step": STEPS,
    "kind": st.sampled_from(("check", "action", "fix", "verify")),
    "result": RESULTS | TEXTS,
    "readings": st.dictionaries(TEXTS, st.just({"value": "1", "unit": "V", "typed": "1"}),
                                max_size=2),
    "stated": st.booleans(),
    "seen": TEXTS,
    "wrote": st.dictionaries(TEXTS, TEXTS, max_size=1),
    "at": st.none(),
    "minutes": st.none(),
})  # fmt: skip


@settings(max_examples=25)
@given(rows=st.lists(ROWS, min_size=1, max_size=8), words=TEXTS, is_fix=st.booleans())
def test_a_record_from_anywhere_makes_no_error(
    rows: list[dict[str, Any]], words: str, is_fix: bool
) -> None:
    """Of another shop, of trees that were changed, with any text in it: the draft can be read."""
    end = {"in": rows[0]["in"], "step": rows[0]["step"], "kind": "fix" if is_fix else "foreman",
           "verified": None}  # fmt: skip
    record = {"tree": "charging/lamp-on", "revision": "", "vehicle": words, "complaint": words,
              "steps": rows, "end": end["step"], "ended": end}  # fmt: skip
    assert record_mistake(record) == ""
    if draft_of("samples", record):  # else nothing was done in any tree
        made_from("samples", record)


@pytest.mark.parametrize("shop", ["shop", "samples"])
@settings(max_examples=25)
@given(seed=st.integers(0, 10**6), length=st.integers(10, 60))
def test_a_draft_goes_the_way_of_its_job(shop: str, seed: int, length: int) -> None:
    """Of any walk: no error in the draft, and the same answers lead through the same steps."""
    library, trees, tables = shop_of(shop)
    random = Random(seed)
    state = random_state(tables, random.choice([*trees]), random, length)
    expected = done_before_success(state, tables)
    if not expected and state.end is None:
        return
    tree = made_from(shop, record_of(state))
    table = tree_table(tree, library)
    with_made = walk_tables(library, {**tables.trees, MADE: table})
    again = walked_again(with_made, state, expected)
    pairs = zip(expected, again, strict=True)
    assert all(same_step(with_made, was, now) for was, now in pairs), (expected, again)
