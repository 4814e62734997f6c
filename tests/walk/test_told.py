"""What a step tells of states and cautions, held against the rules of the format's description."""

import pytest

from builder.walk.events import HandOver, Pause, Resume
from builder.walk.screen import screen
from builder.walk.walk_tables import WalkTables
from tests.walk.played import after, lines_told, place, started, typed

TREE = "charging/lamp-on"


def shown_hazards(shown: dict[str, object]) -> dict[str, bool]:
    """Return by hazard whether it is shown in full."""
    hazards = shown.get("hazards", [])
    assert isinstance(hazards, list)
    return {one["id"]: one["full"] for one in hazards}


def test_a_change_is_told_once(samples: WalkTables) -> None:
    """The engine is started for the first step that needs it, and told as running at the next."""
    state = started(samples, TREE, enter="running")
    first = screen(samples, state)
    assert "Start the engine" in lines_told(first, "change")
    state = typed(samples, state, "14.0 V")
    second = screen(samples, state)
    assert place(state) == f"{TREE}#ripple"
    assert lines_told(second, "change") == []
    assert "engine running" in second["now"]


def test_going_back_to_normal_is_told_at_an_end(samples: WalkTables) -> None:
    """What was turned on is turned off, the key last."""
    state = typed(samples, started(samples, TREE, enter="hot"), "14.0 V", "2", "2")
    shown = screen(samples, state)
    assert shown["end"]["kind"] == "not-found"
    assert lines_told(shown, "put back") == ["Turn those loads off", "Turn the key off"]


def test_hooking_up_is_done_with_the_key_off(samples: WalkTables) -> None:
    """Key off, the lines to do, then the engine."""
    state = typed(samples, started(samples, TREE, enter="running"), "12.0 V")
    assert place(state) == f"{TREE}#output"
    lines = [(line["of"], line["text"]) for line in screen(samples, state)["lines"]]
    assert lines[0] == ("change", "Turn the key off")
    kinds = [of for of, _ in lines]
    assert kinds == sorted(kinds, key=["change", "do", "after"].index)
    assert ("after", "Start the engine") in lines


def test_a_caution_is_shown_in_full_once(samples: WalkTables) -> None:
    """In full when the engine is first started, as one line at the next step."""
    state = started(samples, TREE, enter="running")
    assert shown_hazards(screen(samples, state))["rotating-parts"]
    state = typed(samples, state, "14.0 V")
    assert shown_hazards(screen(samples, state))["rotating-parts"] is False


@pytest.mark.parametrize("event", [Pause(), HandOver(to="R. Osei")])
def test_a_caution_is_in_full_again_after_a_break(
    samples: WalkTables, event: Pause | HandOver
) -> None:
    """Who comes back, or comes new, reads it again."""
    state = typed(samples, started(samples, TREE, enter="running"), "14.0 V")
    state = after(samples, state, event, Resume())
    assert shown_hazards(screen(samples, state))["rotating-parts"]
    assert "rotating-parts" in screen(samples, state)["unread"]


def test_a_danger_is_always_in_full(samples: WalkTables) -> None:
    """DANGER means death or serious injury if it isn't avoided (ANSI Z535.4): never one line."""
    dangers = [
        (tree, id_, hazard)
        for tree, table in samples.trees.items()
        for id_, row in table["steps"].items()
        for hazard in row.get("hazards", ())
        if samples.shop["hazards"][hazard]["signal"] == "DANGER"
    ]
    assert dangers
    shown_in_full = 0
    for tree, id_, hazard in dangers:
        state = started(samples, tree, enter=id_)
        state = typed(samples, state, "read") if "asks" not in screen(samples, state) else state
        if "hazards" in screen(samples, state):
            assert shown_hazards(screen(samples, state))[hazard]
            shown_in_full += 1
    assert shown_in_full


def test_a_handoff_brings_everything_back_to_normal(samples: WalkTables) -> None:
    """The first step of the other tree tells it, and the cautions are new again."""
    state = typed(samples, started(samples, TREE, enter="running"), "15.6 V")
    assert place(state).startswith("charging/overcharge#")
    shown = screen(samples, state)
    assert lines_told(shown, "put back")[:2] == ["Turn those loads off", "Turn the key off"]
    assert [frame.place for frame in state.left] == [f"{TREE}#running"]
    assert state.known == frozenset()


def test_a_part_has_states_of_its_own(samples: WalkTables) -> None:
    """The argument of a procedure names the connector to unplug, by its name and not its ID."""
    state = started(samples, "brakes/soft-pedal", "tern", enter="abs-feed")
    state = typed(samples, state, "run")
    assert place(state) == "procedures/power-and-ground#power"
    lines = lines_told(screen(samples, state), "change")
    assert "Unplug the ABS module" in lines
    assert "Hook up the 9 A load" in lines
    assert lines.index("Unplug the ABS module") < lines.index("Hook up the 9 A load")


def test_what_a_procedure_says_first_stands_at_its_first_step(samples: WalkTables) -> None:
    """The walk shows no head of a procedure, and "never by ohms" must be read before the meter."""
    steps = samples.shop["procedures"]["wire-test"]["steps"]
    first = samples.shop["procedures"]["wire-test"]["start"]
    head = "For signal wires. Prove a heavy cable by its voltage drop under load, never by ohms."
    assert [name for name, row in steps.items() if row.get("note", "").startswith(head)] == [first]
