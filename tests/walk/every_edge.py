"""Every edge of a tree, played: each step left in each way that its row has.

In: the tables, a tree, a vehicle. Out: the moves, each from the state after an earlier one, as a
script can play them, and the edges that they took. A walk goes on once from each place, whatever
led there; only where edges are missing then are places told apart by how often a step was done.
Another tree that is handed off to has edges of its own; from there the way back is taken once.
"""

from collections import deque
from collections.abc import Hashable, Iterator, Mapping
from dataclasses import dataclass, field
from random import Random
from typing import Any

from builder.walk.at_step import tools_of_row
from builder.walk.drill import right_event, simulated_fill
from builder.walk.event_files import event_row
from builder.walk.events import (
    Acknowledge,
    Answer,
    CannotTest,
    Done,
    Event,
    Fill,
    NoneOfThese,
    Rejoin,
    RunProcedure,
    Start,
    TakeEarlier,
    Verified,
)
from builder.walk.job_state import JobState, Refused, judges_in_words
from builder.walk.record import record_of
from builder.walk.reduce import reduce_event
from builder.walk.screen import screen
from builder.walk.simulated_readings import simulated_readings
from builder.walk.simulated_vehicle import SimulatedVehicle
from builder.walk.spec_ranges import with_ranges
from builder.walk.told import proved_elsewhere, row_of
from builder.walk.tree_rows import WalkStepRow
from builder.walk.walk_tables import WalkTables
from tests.walk.edges import Edge, edges_of, edges_taken
from tests.walk.page_script import Move

MOST_PLACES = 4000  # looked at for the edges that are missing
LONGEST = 300  # events in another tree


@dataclass
class Played:
    """The moves in one tree, and the edges that they took."""

    tables: WalkTables
    tree: str
    vehicle: str
    random: Random
    moves: list[Move] = field(default_factory=list)
    states: list[JobState] = field(default_factory=list)
    edges: set[Edge] = field(default_factory=set)

    def move(self, begin: int, event: Event) -> int | None:
        """Play an event; None where it is refused."""
        before = self.states[begin] if begin >= 0 else JobState()
        after = reduce_event(self.tables, before, event)
        is_refused = isinstance(after, Refused)
        state = before if isinstance(after, Refused) else after
        refused = after.message if isinstance(after, Refused) else ""
        record = record_of(state) if state.end and not is_refused else None
        shown = screen(self.tables, state)
        self.moves.append(Move(begin, event_row(event), refused, shown, record))
        self.states.append(state)
        if is_refused:
            return None
        self.edges.update(edges_taken(self.tables, before, event, state))
        return len(self.states) - 1


def play_edges(tables: WalkTables, tree: str, vehicle: str = "") -> Played:
    """Play every edge of a tree; what is still missing then, no walk takes."""
    played = Played(tables, tree, vehicle, Random(3))
    start = played.move(-1, Start(tree=tree, vehicle=vehicle, complaint="it does it again"))
    assert start is not None
    _explore(played, start)
    for edge in sorted(edges_of(tables, tree) - played.edges):
        _explore(played, start, edge)
    return played


def _explore(played: Played, start: int, missing: Edge | None = None) -> None:
    queue, seen = deque([start]), set[Hashable]()
    handed = set[tuple[str, str]]()
    while queue and len(seen) < MOST_PLACES and missing not in played.edges:
        at = queue.popleft()
        state = played.states[at]
        if state.frames[0].inside != played.tree:
            entered = (state.frames[0].inside, state.left[0].place)
            if not missing and entered not in handed:
                handed.add(entered)
                _come_back(played, at)
            continue
        key = _place(state, played.moves[at].screen), missing and _visits(state, missing)
        if key in seen:
            continue
        seen.add(key)
        queue += (there for event in ways(played, at) if (there := played.move(at, event)))


def _place(state: JobState, shown: Mapping[str, Any]) -> Hashable:
    """Return what tells places of a walk apart, as far as other edges lead on from there."""
    frames = (
        (one.place, one.came_from.get(one.step), one.waits, one.verifies, tuple(one.items.items()),
         tuple(one.filled))
        for one in state.frames
    )  # fmt: skip
    to_fill = tuple(one["name"] for one in shown.get("asks", ()))
    return tuple(frames), state.end, state.verifying, to_fill, bool(state.read)


def _visits(state: JobState, edge: Edge) -> Hashable:
    """Return how often the step of an edge was come to, in each frame that may leave it."""
    return tuple(one.counts.get(edge.step) for one in state.frames if one.inside == edge.inside)


def ways(played: Played, at: int) -> Iterator[Event]:
    """Yield every event that leaves the step, or first what has to be filled in or read."""
    tables, state = played.tables, played.states[at]
    shown = played.moves[at].screen
    if asks := shown.get("asks"):
        yield from _fills(tables, state, asks[0], played)
        return
    if unread := shown.get("unread"):
        yield Acknowledge(hazards=tuple(unread))
        return
    if shown["phase"] == "end":
        return
    if judges_in_words(state):
        yield from (Verified(passed=True), Verified(passed=False))
        return
    row = with_ranges(tables, state, row_of(tables, state.frames[-1]))
    if row["kind"] in ("action", "fix"):
        yield Done()
    if row["kind"] != "fix":
        yield from (CannotTest(seen="no lift"), NoneOfThese(seen="it smokes"))
    if row["kind"] == "check":
        yield from _answers(played, state, row)


def _answers(played: Played, state: JobState, row: WalkStepRow) -> Iterator[Event]:
    if "by" in row:
        yield RunProcedure()
        if proved_elsewhere(state, row):
            yield TakeEarlier()
    tools = tools_of_row(played.tables, row)
    for at, _ in enumerate(row["results"]):
        readings = simulated_readings(row, tools, at, played.random)
        if readings:
            yield Answer(result=at, readings=readings)
        if readings is None and not row["readings"] and "by" not in row:
            yield Answer(result=at)
        elif row["readings"] or "by" in row:
            yield Answer(result=at, stated=True)


def _fills(
    tables: WalkTables, state: JobState, ask: dict[str, Any], played: Played
) -> Iterator[Event]:
    vehicle = SimulatedVehicle(tables, played.tree, "", played.random)
    if ask["one_of"]:
        yield from (Fill(name=ask["name"], value=one) for one in ask["one_of"])
        return
    yield simulated_fill(ask, vehicle)
    if "limits" in ask:
        yield CannotTest(seen="no service information")


def _come_back(played: Played, at: int) -> None:
    """Repair what another tree finds, and go back to the step that handed off to it."""
    tables = played.tables
    there = played.states[at].frames[0].inside
    steps = tables[there]["steps"]
    fix = next((id_ for id_, row in steps.items() if row["kind"] == "fix"), "")
    vehicle = SimulatedVehicle(tables, there, fix, played.random)
    for _ in range(LONGEST):
        if "rejoin" in played.moves[at].screen:
            played.move(at, Rejoin())
            return
        if played.moves[at].screen["phase"] == "end":
            return
        following = played.move(at, right_event(tables, vehicle, played.states[at]))
        assert following is not None, played.moves[-1]
        at = following
