"""Which cautions are shown at a step: no hazard is met before its caution, and none is repeated."""

from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from builder.graph.cautions import (
    Caution,
    cautions_at,
    cautions_back_to_normal,
    hazards_of_changes,
    on_paper,
)
from builder.graph.run_frames import PathKnowledge
from builder.graph.state_changes import back_to_normal
from builder.graph.step_entry import Planner, StepEntry, entry_of
from builder.graph.vehicle_paths import vehicle_paths
from builder.model.checks import Check
from builder.model.conditions import Condition
from builder.model.knowledge import Hazard, Signal
from builder.model.text import NOWHERE, Text
from builder.model.tree import Need, Step
from builder.reader.knowledge_files import read_knowledge

from .random_conditions import conditions_files
from .random_walkable_trees import walkable

SHOP = Path(__file__).parents[1] / "shop"
ROUNDS = settings(
    max_examples=40, deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)  # fmt: skip
DANGER = "hazard 0"


@pytest.fixture(scope="module")
def shop() -> dict[str, Condition]:
    """Return the conditions of the tests' shop."""
    return dict(read_knowledge(SHOP)[0].conditions)


def hazard(name: str, signal: Signal = Signal.WARNING) -> Hazard:
    """Return a hazard."""
    return Hazard(id=Text(name), signal=signal, hazard=Text("It can hurt"),
                  harm=Text("Cuts"), avoid=Text("Keep clear"))  # fmt: skip


def step(*states: str, hook_up: str = "", hazards: tuple[str, ...] = ()) -> Step:
    """Return a check that needs some states."""
    return Step(
        Text("look"), NOWHERE, Text("Is it good?"), Check(()),
        needs=tuple(Need(Text(one)) for one in states), hook_up=Text(hook_up) if hook_up else None,
        hazards=tuple(map(Text, hazards)),
    )  # fmt: skip


def full(cautions: tuple[Caution, ...]) -> list[str]:
    """Return those that are shown in full."""
    return [one.hazard for one in cautions if one.full]


def test_in_full_when_a_state_is_entered_and_as_one_line_later(shop: dict[str, Condition]) -> None:
    """Who reads it a second time has read it."""
    running = list(map(str, shop["engine-running"].hazards))
    entry = entry_of(Planner(shop), (), step("engine-running"))
    first = cautions_at(shop, entry, {}, frozenset())
    assert full(first.changing) == running
    again = cautions_at(shop, entry, {}, first.shown)
    assert [one.hazard for one in again.every] == running
    assert full(again.every) == []
    assert full(cautions_at(shop, entry, {}, frozenset()).every) == running  # after a break


def test_a_state_that_stays_is_one_line(shop: dict[str, Condition]) -> None:
    """The next step in the same state says so, shortly; after a break in full."""
    planner = Planner(shop)
    first = entry_of(planner, (), step("engine-running"))
    after = entry_of(planner, first.states, step("engine-running"))
    shown = cautions_at(shop, first, {}, frozenset()).shown
    running = list(map(str, shop["engine-running"].hazards))
    assert [one.hazard for one in cautions_at(shop, after, {}, shown).standing] == running
    assert full(cautions_at(shop, after, {}, shown).every) == []
    assert full(cautions_at(shop, after, {}, frozenset()).standing) == running


def test_hooking_up_shows_the_cautions_before_and_again_with_the_state(
    shop: dict[str, Condition],
) -> None:
    """They are read while the engine is off; starting it says them once more, as one line."""
    running = list(map(str, shop["engine-running"].hazards))
    entry = entry_of(Planner(shop), (), step("engine-running", hook_up="key-off"))
    found = cautions_at(shop, entry, {}, frozenset())
    assert full(found.own) == running
    assert [one.hazard for one in found.after] == running
    assert full(found.after) == []


def test_danger_is_always_in_full(shop: dict[str, Condition]) -> None:
    """It never turns into a habit."""
    hazards = {"high-voltage": hazard("high-voltage", Signal.DANGER)}
    entry = entry_of(Planner(shop), (), step("key-off", hazards=("high-voltage", "hot-parts")))
    found = cautions_at(shop, entry, hazards, frozenset({"high-voltage", "hot-parts"}))
    assert full(found.every) == ["high-voltage"]


def test_paper_has_the_states_and_their_hazards(shop: dict[str, Condition]) -> None:
    """Whatever was done before: paper can't know."""
    states, hazards = on_paper(shop, step("engine-running", hazards=("hot-parts",)))
    assert [one.condition for one in states] == ["engine-running"]
    assert hazards == (*map(str, shop["engine-running"].hazards), "hot-parts")


@ROUNDS
@given(st.data())
def test_on_no_path_a_hazard_is_met_before_its_caution(data: st.DataObject) -> None:
    """In full at first, as one line later, a DANGER always in full, also when put back."""
    plain = data.draw(conditions_files(plain=True))
    kinds = {
        name: replace(one, hazards=(Text(f"hazard {number % 4}"),))
        for number, (name, one) in enumerate(plain.items())
    }
    hazards = {DANGER: hazard(DANGER, Signal.DANGER)}
    tree, procedures = data.draw(walkable(kinds, counted=True))
    paths = vehicle_paths(tree, PathKnowledge(Planner(kinds), procedures))
    for last in paths.moves_from:
        shown, met = frozenset[str](), set[str]()
        for place in paths.path_to(last):
            entry, left = paths.entries[place], place.states
            if isinstance(entry.step.body, Check) and entry.step.body.by:
                continue
            left = entry.states
            found = cautions_at(kinds, entry, hazards, shown)
            is_warned(entry, {one.hazard: one.full for one in found.every[::-1]}, met)
            shown = found.shown
        made, _ = back_to_normal(kinds, left)
        back = {one.hazard: one.full for one in cautions_back_to_normal(made, hazards, shown)}
        assert set(hazards_of_changes(made)) == set(back)
        for name, is_full in back.items():
            assert is_full == (name not in met or name == DANGER)


def is_warned(entry: StepEntry, shown: dict[str, bool], met: set[str]) -> None:
    """Hold the cautions of a step against what is met there; `met` is what was met before."""
    brought = {str(one) for change in entry.changed for one in change.hazards}
    assert brought <= shown.keys()
    for name, is_full in shown.items():
        assert is_full == (name not in met or name == DANGER)
    met.update(shown)
