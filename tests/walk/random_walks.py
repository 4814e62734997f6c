"""Random walks: events that fit and some that don't, and what came of them, as JSON.

In: the tables of a walk, a tree, a source of random numbers. Out: the events that were tried, in
the form that a script can play:

    {"tree": "horn/silent", "tries": [{"event": {...}, "refused": ""}, ...], "screens": [...],
     "record": {...}}

`refused` is the message of an event that was refused. `screens` are what was shown after each try.
"""

from decimal import Decimal
from random import Random
from typing import Any

from builder.walk.event_files import event_from, event_row
from builder.walk.events import (
    Acknowledge,
    Answer,
    Back,
    CannotTest,
    Correct,
    Done,
    Event,
    Fill,
    HandOver,
    NoneOfThese,
    Pause,
    Rejoin,
    Resume,
    RunProcedure,
    Start,
    TakeEarlier,
    Tick,
    Verified,
    WriteUp,
)
from builder.walk.job_state import JobState, Refused
from builder.walk.record import record_of
from builder.walk.reduce import reduce_event
from builder.walk.screen import screen
from builder.walk.told import row_of
from builder.walk.tree_rows import WalkStepRow
from builder.walk.walk_tables import WalkTables

LONGEST = 60  # events tried in one walk


def random_walk(tables: WalkTables, tree: str, random: Random) -> dict[str, Any]:
    """Walk at random, and return what was tried and what came of it."""
    state = JobState()
    tries, screens = [], []
    for number in range(LONGEST):
        event = random_event(tables, state, tree, random, _time(number))
        following = reduce_event(tables, state, event)
        refused = following.message if isinstance(following, Refused) else ""
        if not isinstance(following, Refused):
            state = following
        tries.append({"event": event_row(event), "refused": refused})
        screens.append(screen(tables, state))
        if state.end and random.random() < 0.2:
            break
    return {"tree": tree, "tries": tries, "screens": screens, "record": record_of(state)}


def random_state(tables: WalkTables, tree: str, random: Random, length: int) -> JobState:
    """Return where a random walk is after some events that fitted."""
    state = JobState()
    for number in range(length):
        event = random_event(tables, state, tree, random, _time(number))
        following = reduce_event(tables, state, event)
        state = state if isinstance(following, Refused) else following
    return state


def _time(number: int) -> str:
    hours, minutes = divmod(7 * number, 60)
    return f"2026-11-29T{8 + hours:02d}:{minutes:02d}:{number % 60:02d}Z"


def random_event(tables: WalkTables, state: JobState, tree: str, random: Random, at: str) -> Event:
    """Draw an event; most fit."""
    if not state.tree:
        vehicle = random.choice(["", *tables.shop["vehicles"]])
        complaint = random.choice(("noise", "no response, U0121 and u0131-87"))
        return Start(tree=tree, vehicle=vehicle, complaint=complaint, at=at)
    if state.paused and random.random() < 0.9:
        return Resume(at=at, who="M. Lind")
    is_over = state.end and (state.end.kind != "fix" or state.end.verified is not None)
    if random.random() < (0.2 if is_over and not state.left else 0.8):
        return fitting_event(tables, state, random, at)
    shown = screen(tables, state)
    count = len(state.steps)
    return random.choice((
        Back(at=at),
        Back(at=at),
        _correction(tables, state, random, at) if count else Back(at=at),
        _correction(tables, state, random, at) if count else Back(at=at),
        Tick(line=random.randrange(len(shown.get("lines", ())) + 1), at=at),
        Tick(line=0, on=False, at=at),
        Pause(at=at),
        HandOver(to="R. Osei", at=at),
        Resume(at=at),
        Rejoin(at=at),
        Done(at=at),
        CannotTest(seen="no tool", at=at),
        NoneOfThese(seen="it smokes", at=at),
        TakeEarlier(at=at),
        Verified(passed=True, at=at),
        WriteUp(name="cause", text="it is loose", at=at),
        Answer(result=random.randrange(9), at=at),
        Answer(step="nowhere", result=0, at=at),
        Correct(index=random.randrange(-1, count + 1), result=0, stated=True, at=at),
        Start(tree=tree, at=at),
        Fill(name="nothing", value="x", at=at),
        Acknowledge(hazards=("nothing",), at=at),
    ))  # fmt: skip


def fitting_event(tables: WalkTables, state: JobState, random: Random, at: str) -> Event:
    """Draw an event that moves the walk on, such as the screen asks for."""
    shown = screen(tables, state)
    place = f"{shown['in']}#{shown['step']}"
    if shown.get("asks"):
        gives_up = "limits" in shown["asks"][0] and random.random() < 0.1
        return CannotTest(at=at) if gives_up else _filling(shown["asks"][0], random, at)
    if shown.get("unread"):
        return Acknowledge(hazards=tuple(shown["unread"]), step=place, at=at, who="R. Osei")
    if shown.get("rejoin"):
        return Rejoin(at=at)
    if state.end and state.end.kind == "fix" and random.random() < 0.3:
        name = random.choice(("cause", "repair", shown["step"]))
        return WriteUp(name=name, text=random.choice(("the lug was loose", "")), step=place, at=at)
    if shown["phase"] == "verify":
        return Verified(passed=random.random() < 0.7, step=place, at=at)
    row = row_of(tables, state.frames[-1])
    if "earlier" in shown and random.random() < 0.5:
        return TakeEarlier(step=place, at=at)
    if "by" in row and random.random() < 0.9:
        return RunProcedure(step=place, at=at)
    if row["kind"] == "check":
        return random_answer(row, random, place, at)
    return Done(step=place, wrote={"DTCs": "P0562"} if random.random() < 0.3 else {}, at=at)


def _filling(ask: dict[str, Any], random: Random, at: str) -> Fill:
    if "limits" in ask:
        limits = sorted(random.randrange(1, 20) for _ in ask["limits"])
        typed = tuple(f"{limit} {ask['unit']}" for limit in limits)
        value = typed if ask.get("list") else typed[0]
        return Fill(name=ask["name"], value=value, source="maker", at=at)
    if "codes" in ask and random.random() < 0.5:
        codes = random.choices(list(ask["codes"]), k=random.choice((1, 1, 2)))
        return Fill(name=ask["name"], value=" ".join(codes) + random.choice(("", "-16")), at=at)
    one = random.choice(ask["one_of"] or ["left", "right"])
    return Fill(name=ask["name"], value=("one", "two") if ask.get("list") else one, at=at)


def random_answer(row: WalkStepRow, random: Random, place: str, at: str) -> Answer:
    """Answer a check: readings near the limits, or a result by its number."""
    result = random.randrange(len(row["results"])) if row["results"] else None
    if not row["readings"] or random.random() < 0.1:
        stated = bool(row["readings"]) or "by" in row
        wrote = {"DTCs": "P0562 current"} if random.random() < 0.1 else {}
        return Answer(step=place, result=result, stated=stated, wrote=wrote, at=at)
    typed = {name: _spec(random) for name in row.get("figure", ())}
    typed |= {one["name"]: _reading(row, dict(one), random) for one in row["readings"]}
    chosen = result if random.random() < 0.4 else None
    return Answer(step=place, result=chosen, readings=typed, at=at)


def _correction(tables: WalkTables, state: JobState, random: Random, at: str) -> Correct:
    index = random.randrange(len(state.steps))
    entry = state.steps[index]
    row = tables[entry.inside]["steps"][entry.step]
    if row["kind"] != "check":
        return Correct(index=index, result=0, at=at)
    answer = random_answer(row, random, "", at)
    return Correct(
        index=index, result=answer.result, readings=answer.readings, stated=answer.stated, at=at
    )


def _spec(random: Random) -> str:
    return str(random.randrange(1, 20))


def _reading(row: WalkStepRow, reading: dict[str, Any], random: Random) -> str:
    if "phrases" in reading:
        return str(random.choice(reading["phrases"]))
    if reading["high"] == "Infinity" and random.random() < 0.2:
        return "OL"
    if random.random() < 0.05:
        return random.choice(("nothing shown", "1 parsec", "x"))
    cuts = [cut for one in row["results"] for cut in one["ranges"].get(reading["name"], ())]
    limits = [Decimal(value) for value, _ in cuts if str(value)[-1:].isdigit()]
    near = random.choice(limits) if limits else Decimal(10)
    value = near + Decimal(random.randrange(-300, 301)) / 100
    low = Decimal(reading["low"])
    text = f"{max(value, low) if low.is_finite() else value:f}"
    text = text.replace(".", ",") if random.random() < 0.2 and not text.endswith("0") else text
    return f"{text} {reading['unit']}" if random.random() < 0.3 else text


def events_of(rows: list[dict[str, Any]]) -> list[Event]:
    """Return the events of a record."""
    events = [event_from(row) for row in rows]
    assert not any(isinstance(event, Refused) for event in events)
    return [event for event in events if not isinstance(event, Refused)]
