"""Ranges of specs: of any vehicle, of this one, by load, looked up."""

import pytest

from builder.walk.screen import screen
from builder.walk.screen_text import screen_lines
from builder.walk.walk_tables import WalkTables
from tests.walk.played import place, refused, started, typed


@pytest.mark.parametrize(
    ("vehicle", "step"), [("", "ripple"), ("tern", "output")], ids=["any vehicle", "this one"]
)
def test_the_vehicle_overrides_what_is_good(samples: WalkTables, vehicle: str, step: str) -> None:
    """13.3 V is good where 13.2 to 14.8 V holds, and low on a vehicle that wants 13.4 V."""
    state = started(samples, "charging/lamp-on", vehicle, enter="running")
    state = typed(samples, state, "13.33 V")
    assert place(state) == f"charging/lamp-on#{step}"


def test_the_load_chooses_the_row(samples: WalkTables) -> None:
    """0.1 V is too much at 9 A (0.075 V) and fine at 2 A (0.2 V)."""
    state = started(samples, "brakes/soft-pedal", "tern", enter="abs-feed")
    state = typed(samples, state, "run")
    high = screen(samples, state)["ranges"][""][1]
    assert high == ["0.075", 1]
    assert place(typed(samples, state, "0.1 V")).endswith("#fuse")
    state = typed(samples, state, "0.05 V", "0.01 V")
    assert place(state).endswith("#switched")
    assert screen(samples, state)["ranges"][""][1] == ["0.2", 1]


def test_a_spec_is_looked_up_once(samples: WalkTables) -> None:
    """The walk asks for it, in any unit of its kind, and keeps it with the job."""
    state = started(samples, "brakes/soft-pedal", enter="linings")
    shown = screen(samples, state)
    assert shown["asks"][0]["name"] == "spec lining"
    (question,) = filter(None, screen_lines(shown, {}, {}))
    assert question.startswith("Look it up for this vehicle: ")
    assert question.endswith(", lowest, in mm?")
    assert "two ways" in refused(samples, state, "3,000")
    assert "voltage" in refused(samples, state, "3 V")
    state = typed(samples, state, "3 mm")
    assert "asks" not in screen(samples, state)
    assert screen(samples, state)["ranges"][""] == [["3", 0], ["Infinity", 1]]
    assert place(typed(samples, state, "2.5 mm")) == "brakes/soft-pedal#pads-fix"
    assert place(typed(samples, state, "4.5 mm")) == "brakes/soft-pedal#leak"


def test_a_spec_that_nobody_can_look_up_gives_up_its_check(samples: WalkTables) -> None:
    """So no good part is condemned by a guess."""
    state = started(samples, "brakes/soft-pedal", enter="linings")
    state = typed(samples, state, "can't test")
    assert state.steps[-1].result == "cannot test"
    assert state.end
    assert state.end.kind == "stuck"


def test_the_vehicle_s_spec_is_not_asked(samples: WalkTables) -> None:
    """A vehicle with the spec in its file needs no question."""
    state = started(samples, "brakes/soft-pedal", "tern", enter="linings")
    assert "asks" not in screen(samples, state)


def test_nothing_shown_is_a_result_of_its_own(samples: WalkTables) -> None:
    """It takes the result `none` where the check has one, and is refused where it hasn't."""
    state = started(samples, "charging/lamp-on", "tern", enter="sense")
    state = typed(samples, state, "nothing shown")
    assert state.steps[-1].result == "none"
    assert state.steps[-1].readings[""].value == "nothing shown"
    state = started(samples, "charging/lamp-on", "tern", enter="running")
    assert "nothing shown" in refused(samples, typed(samples, state, "read"), "nothing shown")


def test_pins_come_from_the_vehicle(samples: WalkTables) -> None:
    """A role is resolved to connector, pin and wire."""
    state = started(samples, "charging/lamp-on", "tern", enter="sense")
    (row,) = screen(samples, state)["at"]
    connector = samples.shop["vehicles"]["tern"]["connectors"][row["connector"]]
    assert connector["of"] == "alternator"
    assert connector["pins"][row["pin"]]["role"] == "sense"
    assert connector["pins"][row["pin"]]["wire"] == row["wire"]


def test_pins_of_a_vehicle_without_data_are_asked_once(samples: WalkTables) -> None:
    """What was typed is shown at the step, and stays with the job."""
    state = started(samples, "charging/lamp-on", enter="sense")
    assert [one["name"] for one in screen(samples, state)["asks"]] == ["pin alternator: sense"]
    state = typed(samples, state, "pin 2, yellow")
    assert screen(samples, state)["at"] == [
        {"name": "pin alternator: sense", "noted": "pin 2, yellow"}
    ]
    assert state.filled == {"pin alternator: sense": "pin 2, yellow"}
