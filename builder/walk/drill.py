"""A drill that answers itself: a walk on a vehicle with a hidden fault.

In: the tables, the vehicle, how it starts. Out: the events that an attentive tech would enter, and
the state once the walk has ended.
"""

from collections.abc import Mapping
from decimal import Decimal
from typing import Any

from builder.walk.at_step import tools_of_row
from builder.walk.events import (
    Acknowledge,
    Answer,
    CannotTest,
    Done,
    Event,
    Fill,
    RunProcedure,
    Start,
    Verified,
)
from builder.walk.job_state import JobState, Refused
from builder.walk.reduce import reduce_event
from builder.walk.screen import screen
from builder.walk.shop_rows import SpecRow
from builder.walk.shortest_way import TWO_ITEMS, Choice
from builder.walk.simulated_readings import simulated_readings
from builder.walk.simulated_vehicle import SimulatedVehicle, visit_of
from builder.walk.spec_ranges import with_ranges
from builder.walk.told import row_of
from builder.walk.walk_tables import WalkTables

LONGEST = 500  # events


def auto_drill(tables: WalkTables, vehicle: SimulatedVehicle, start: Start) -> JobState | Refused:
    """Walk as the vehicle shows it, until the walk has ended."""
    state = reduce_event(tables, JobState(), start)
    for _ in range(LONGEST):
        if isinstance(state, Refused) or screen(tables, state)["phase"] == "end":
            return state
        state = reduce_event(tables, state, right_event(tables, vehicle, state))
    return state


def right_event(tables: WalkTables, vehicle: SimulatedVehicle, state: JobState) -> Event:
    """Return what an attentive tech enters at the step."""
    shown = screen(tables, state)
    if "asks" in shown:
        return simulated_fill(shown["asks"][0], vehicle)
    if "unread" in shown:
        return Acknowledge(hazards=tuple(shown["unread"]))
    choice = vehicle.choice_at(state)
    match choice.kind:
        case "done":
            return Done()
        case "run":
            return RunProcedure()
        case "pass":
            return Verified(passed=True)
        case "cannot test":
            return CannotTest(seen="drill")
        case _:
            return simulated_answer(tables, vehicle, state, choice)


def simulated_answer(
    tables: WalkTables, vehicle: SimulatedVehicle, state: JobState, choice: Choice
) -> Answer:
    """Return the result of a check, with the readings that show it; the same at each look."""
    visit = visit_of(state)
    if visit not in vehicle.answers:
        vehicle.answers[visit] = _answer(tables, vehicle, state, choice)
    return vehicle.answers[visit]


def _answer(
    tables: WalkTables, vehicle: SimulatedVehicle, state: JobState, choice: Choice
) -> Answer:
    row = with_ranges(tables, state, row_of(tables, state.frames[-1]))
    if not row["readings"]:
        return Answer(result=choice.result)
    tools = tools_of_row(tables, row)
    readings = simulated_readings(row, tools, choice.result, vehicle.random)
    if readings is None:
        return Answer(result=choice.result, stated=True)
    return Answer(result=choice.result, readings=readings)


def simulated_fill(ask: Mapping[str, Any], vehicle: SimulatedVehicle) -> Fill:
    """Return something for what the walk asks."""
    if "limits" in ask:
        spec = vehicle.tables.shop["specs"][ask["name"].removeprefix("spec ")]
        limits = _limits_within(spec, len(ask["limits"]) + 1)
        return Fill(name=ask["name"], value=tuple(limits) if ask.get("list") else limits[0])
    one = vehicle.random.choice(ask["one_of"] or ["per the diagram"])
    return Fill(name=ask["name"], value=TWO_ITEMS if ask.get("list") else one)


def _limits_within(spec: SpecRow, parts: int) -> list[str]:
    """Return 5, 10; where the span ends before that, parts of it, so that a reading can be good."""
    low, high = Decimal(spec["low"]), Decimal(spec["high"])
    if (low < 5 and high > 5 * (parts - 1)) or not (high - low).is_finite():
        return [str(5 * at) for at in range(1, parts)]
    return [f"{low + (high - low) * at / parts:.2f}" for at in range(1, parts)]
