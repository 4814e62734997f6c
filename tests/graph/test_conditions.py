"""Worked examples over the shop's conditions: what is told from one step to the next.

The order is read off the text of the format; that a tech would do it so is common practice, no
source.
"""

from dataclasses import replace
from pathlib import Path

import pytest

from builder.graph.change import Change
from builder.graph.state_changes import back_to_normal, changes
from builder.graph.vehicle_states import States, at_odds, excludes, holds, power_state
from builder.model.conditions import Condition, VehicleState
from builder.model.text import Text
from builder.reader.knowledge_files import read_knowledge

SHOP = Path(__file__).parents[1] / "shop"


@pytest.fixture(scope="module")
def shop() -> dict[str, Condition]:
    """Return the conditions of the tests' shop, which are the samples of the format."""
    return dict(read_knowledge(SHOP)[0].conditions)


def needed(*words: str) -> list[VehicleState]:
    """Return states from words as a step has them: `key-on`, `unplugged: pump`, `loaded: 9 A`."""
    states = []
    for word in words:
        condition, _, what = word.partition(": ")
        value, _, part = what.partition(" at ") if condition == "loaded" else ("", "", what)
        states.append(VehicleState(condition, part, value))
    return states


def job(shop: dict[str, Condition], *steps: list[VehicleState]) -> tuple[Change, ...]:
    """Return what the last of some steps changes."""
    made: tuple[Change, ...] = ()
    now: States = ()
    for needs in steps:
        made, now = changes(shop, now, needs)
    return made


def told(made: tuple[Change, ...]) -> list[str]:
    """Return every line that is told."""
    return [line.words() for one in made for line in one.told]


ENGINE = ["Select Park or neutral", "Set the parking brake", "Chock the wheels",
          "Hook up the exhaust hose", "Start the engine"]  # fmt: skip
KEY_ON = "Turn the key on, leave the engine off"
WORKED = {
    "the key is turned off to unplug, and on again": (
        [needed("key-on"), needed("key-on", "unplugged: alternator")],
        ["Turn the key off", "Unplug the alternator", KEY_ON],
    ),
    "what a step is silent about stays": (
        [needed("key-on", "unplugged: alternator"), needed("engine-running")],
        ENGINE,
    ),
    "a load goes with the connector that it sits on": (
        [needed("key-on", "unplugged: pump", "loaded: 2 A at pump"), needed("plugged-in: pump")],
        ["Turn the key off", "Remove the 2 A load", "Plug in and latch the pump"],
    ),
    "a load elsewhere stays": (
        [needed("key-on", "unplugged: pump", "unplugged: fan", "loaded: 2 A at pump"),
         needed("key-off", "plugged-in: fan")],
        ["Turn the key off", "Plug in and latch the fan"],
    ),
    "a part carries one load at a time": (
        [needed("key-off", "unplugged: pump", "loaded: 2 A at pump"),
         needed("key-off", "unplugged: pump", "loaded: 9 A at pump")],
        ["Remove the 2 A load", "Hook up the 9 A load", "Switch it on only while you read"],
    ),
    "the engine is off before a load of ours goes on": (
        [needed("engine-running"), needed("unplugged: pump", "loaded: 9 A at pump", "key-on")],
        ["Turn the key off", "Unplug the pump", "Hook up the 9 A load",
         "Switch it on only while you read", KEY_ON],
    ),
    "the battery is reconnected, and no key is turned off that is off": (
        [needed("battery-disconnected"), needed("key-off")],
        ["Reconnect and tighten the negative cable last", "Set the clock and windows"],
    ),
    "a disconnected battery is good enough to unplug": (
        [needed("battery-disconnected"), needed("battery-disconnected", "unplugged: fan")],
        ["Unplug the fan"],
    ),
    "the vehicle comes down before it's driven": (
        [needed("key-on", "raised"), needed("moving")],
        ["Turn the key off", "Clear the tools from under it", "Lower it",
         "Try the brakes and steering at walking speed in the lot"],
    ),
    "what has no text is told nothing": (
        [needed("wheels-straight"), needed("wheels-as-is")],
        [],
    ),
    "battery support goes on with the key on or off, never with the engine running": (
        [needed("engine-running"), needed("battery-support", "key-on")],
        ["Turn the key off", "Turn the lights and blower off",
         "Connect the power supply to the battery", "Set it to 13.5 V", KEY_ON],
    ),
    "in the order of the step, but unplugged before it's loaded": (
        [needed("key-off", "loaded: 2 A at fan", "unplugged: fan", "wheels-turned")],
        ["Unplug the fan", "Hook up the 2 A load", "Switch it on only while you read",
         "Turn the steering as needed"],
    ),
}  # fmt: skip


@pytest.mark.parametrize(("steps", "lines"), WORKED.values(), ids=WORKED)
def test_a_change_is_told_as_in_the_bay(
    steps: list[list[VehicleState]], lines: list[str], shop: dict[str, Condition]
) -> None:
    """Only what changes, in the order in which somebody does it."""
    assert told(job(shop, *steps)) == lines


def test_at_an_end_it_is_put_back_in_reverse(shop: dict[str, Condition]) -> None:
    """What was entered last goes first; the battery comes last."""
    needs = needed("raised", "system-open", "unplugged: fan", "battery-disconnected")
    _, now = changes(shop, (), needs)
    made, left = back_to_normal(shop, now)
    assert left == ()
    assert told(made) == [
        "Plug in and latch the fan", "Torque the fittings", "Bleed what was open",
        "Fill the reservoir", "Clear the tools from under it", "Lower it",
        "Reconnect and tighten the negative cable last", "Set the clock and windows",
    ]  # fmt: skip
    assert [int(one.minutes) for one in made] == [1, 10, 4, 5]


def test_entering_counts_minutes_wait_hazards_and_deeds(shop: dict[str, Condition]) -> None:
    """Disconnecting the battery takes 5 min of work and 5 min of waiting, and counts as that."""
    (made,) = job(shop, needed("battery-disconnected"))
    assert (made.minutes, made.wait) == (5, 5)
    assert made.hazards == ("battery-gas", "battery-short", "memory-lost")
    assert [one.verb for one in made.does] == ["disconnect-battery"]


def test_leaving_counts_minutes_hazards_and_deeds(shop: dict[str, Condition]) -> None:
    """Reconnecting takes as long, straight to another power state too, and has its cautions."""
    for after, minutes in (("key-off", 5), ("key-on", 5), ("engine-running", 6)):
        (made,) = job(shop, needed("battery-disconnected"), needed(after))
        assert (made.minutes, made.wait) == (minutes, 0)
        assert made.hazards[:2] == ("battery-gas", "battery-short")
        assert [one.verb for one in made.does] == ["connect-battery"]


def test_a_state_without_undo_has_the_minutes_and_hazards_of_the_normal_one(
    shop: dict[str, Condition],
) -> None:
    """Closing the brake system takes its own 10 min, lowering the 4 min of raising."""
    closed = job(shop, needed("system-open"), needed("system-closed"))
    assert [(int(one.minutes), one.hazards) for one in closed] == [
        (10, ("brake-failure", "brake-fluid"))
    ]
    (lowered,) = job(shop, needed("raised"), needed("on-the-ground"))
    assert (lowered.minutes, lowered.hazards, lowered.does) == (4, (), ())


def test_a_state_that_needs_power_comes_after_it() -> None:
    """Where a state excludes the key off, the engine is started first; to unplug, it ends first."""
    on_off = {"group": "power"}
    kinds = {
        one.id: one
        for one in (
            kind("key-off", normal=True, **on_off),
            kind("running", **on_off),
            kind("cooling", excludes=("key-off",), changed_with=("running",)),
            kind("plugged", group="plug", normal=True, changed_with=("key-off",)),
            kind("unplugged", group="plug", changed_with=("key-off",)),
        )
    }
    needs = needed("cooling", "unplugged", "running")
    made, now = changes(kinds, (), needs)
    assert told(made) == ["unplugged", "running", "cooling"]
    made, _ = changes(kinds, changes(kinds, (), needed("cooling", "running"))[1], needs)
    assert told(made) == ["not cooling", "key-off", "unplugged", "running", "cooling"]
    assert told(back_to_normal(kinds, now)[0]) == ["not cooling", "key-off", "plugged"]


@pytest.mark.parametrize(
    ("needs", "lines"),
    [
        (("hood-up", "unplugged"), ["key-off", "hood-up", "unplugged"]),
        (("hood-up",), ["key-on", "hood-up"]),
        (("key-in-hand", "hood-up"), ["key-off", "key-in-hand", "hood-up"]),
    ],
    ids=["where all can be done", "to the first listed", "not where a needed state rules it out"],
)
def test_the_key_is_turned_once(needs: tuple[str, ...], lines: list[str]) -> None:
    """From a running engine it goes where everything of the step can be changed."""
    kinds = {
        one.id: one
        for one in (
            kind("key-off", group="power", normal=True),
            kind("key-on", group="power"),
            kind("running", group="power"),
            kind("hood-up", changed_with=("key-on", "key-off")),
            kind("unplugged", changed_with=("key-off",)),
            kind("key-in-hand", excludes=("key-on", "running")),
        )
    }
    _, now = changes(kinds, (), needed("running"))
    assert told(changes(kinds, now, needed(*needs))[0]) == lines


def kind(name: str, **words: object) -> Condition:
    """Make a condition whose lines are its name."""
    listed = {key: tuple(map(Text, one)) for key, one in words.items() if isinstance(one, tuple)}
    undo = () if "group" in words else (Text(f"not {name}"),)
    return Condition(id=Text(name), enter=(Text(name),), undo=undo, **(words | listed))


def test_helpers_know_what_holds(shop: dict[str, Condition]) -> None:
    """A normal state holds while no other of its group does, each part by itself."""
    _, now = changes(shop, (), needed("key-on", "unplugged: pump", "loaded: 2 A at pump"))
    assert holds(shop, now, VehicleState("unplugged", "pump"))
    assert holds(shop, now, VehicleState("plugged-in", "fan"))
    assert not holds(shop, now, VehicleState("plugged-in", "pump"))
    assert not holds(shop, now, VehicleState("loaded", "pump", "9 A"))
    assert holds(shop, now, VehicleState("on-the-ground"))
    assert power_state(shop, now) == VehicleState("key-on")
    assert power_state(shop, ()) == VehicleState("key-off")


def test_excluding_works_both_ways_and_at_one_part(shop: dict[str, Condition]) -> None:
    """Plugging in the pump concerns the load at the pump and no other."""
    load = VehicleState("loaded", "pump", "2 A")
    for other, expected in (("pump", True), ("fan", False)):
        assert excludes(shop, load, VehicleState("plugged-in", other)) is expected
        assert excludes(shop, VehicleState("plugged-in", other), load) is expected
    assert excludes(shop, VehicleState("moving"), VehicleState("unplugged", "fan"))


def test_a_load_without_its_connector_unplugged_is_at_odds(shop: dict[str, Condition]) -> None:
    """A step whose state excludes a normal one names the other state of that group too."""
    load = VehicleState("loaded", "pump", "2 A")
    assert list(at_odds(shop, [load])) == [(load, VehicleState("plugged-in", "pump"))]
    assert list(at_odds(shop, [load, VehicleState("unplugged", "pump")])) == []
    assert list(at_odds(shop, needed("key-on", "key-off"))) == [tuple(needed("key-on", "key-off"))]
    assert list(at_odds(shop, needed("raised", "moving"))) == [tuple(needed("raised", "moving"))]


def test_the_battery_is_disconnected_before_a_part_is_unplugged(
    shop: dict[str, Condition],
) -> None:
    """An airbag's connector is never opened with the power on, in whatever order it is asked."""
    battery, pump = "battery-disconnected", "unplugged: pump"
    for needs in ([battery, pump], [pump, battery], ["raised", pump, battery]):
        _, now = changes(shop, (), needed("engine-running"))
        made, _ = changes(shop, now, needed(*needs))
        lines = told(made)
        assert lines.index("Disconnect the negative cable") < lines.index("Unplug the pump")
        assert lines.count("Turn the key off") == 1


def test_what_is_in_the_way_of_the_battery_is_changed_before_it(
    shop: dict[str, Condition],
) -> None:
    """Where the battery can't be reached on the ground, the car is raised before it is off."""
    no_battery = replace(
        shop["battery-disconnected"],
        excludes=(*shop["battery-disconnected"].excludes, Text("on-the-ground")),
    )
    kinds = {**shop, "battery-disconnected": no_battery}
    made, now = changes(kinds, (), needed("battery-disconnected", "raised"))
    entered = [one.entered.condition for one in made if one.entered]
    assert entered.index("raised") < entered.index("battery-disconnected")
    assert holds(kinds, now, VehicleState("raised"))


def test_a_part_is_plugged_in_before_the_battery_is_reconnected(
    shop: dict[str, Condition],
) -> None:
    """Also where something else can be changed with the key on alone."""
    _, now = changes(shop, (), needed("battery-disconnected", "unplugged: pump"))
    needs = needed("battery-support", "plugged-in: pump", "key-on")
    lines = told(changes(shop, now, needs)[0])
    plugged = lines.index("Plug in and latch the pump")
    assert plugged < lines.index("Reconnect and tighten the negative cable last")


def test_the_key_is_told_once_on_the_way_to_a_disconnected_battery(
    shop: dict[str, Condition],
) -> None:
    """What needs the key first tells it, and the battery doesn't tell it again."""
    off_only = replace(shop["battery-support"], changed_with=(Text("key-off"),))
    kinds = {**shop, "battery-support": off_only}
    _, now = changes(kinds, (), needed("battery-support", "key-on"))
    made, _ = changes(kinds, now, needed("battery-disconnected"))
    assert told(made).count("Turn the key off") == 1
