"""What is told at the step of a walk: the changes at the vehicle, and the cautions.

In: the tables, the state. Out: a `Plan` of changes; hazards, most severe first. The screen shows
them, the reducer takes over what then holds.

Everything goes back to normal at an end, before the first step of another tree, once a repair is
done, and before each test after the first. At a fix that comes behind its lines, else before them.
What steps took apart goes back before the engine is started, too: nobody runs it with a hose off.
A test keeps what holds and what it needs, so that the engine isn't stopped and started again; but
not if something is to be put back in words.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple, cast

from builder.graph.change import Change
from builder.graph.runs import with_values
from builder.graph.state_changes import Changes, back_to_normal, changes
from builder.graph.step_entry import while_hooking_up
from builder.graph.vehicle_states import States, at_odds, place_of
from builder.model.conditions import POWER, CountsAs, VehicleState
from builder.model.ends import StopKind
from builder.walk.job_state import JobState, WalkFrame, is_over, is_repairing, judges_in_words
from builder.walk.shop_rows import FittingRow
from builder.walk.tree_rows import WalkStepRow
from builder.walk.walk_tables import WalkTables


@dataclass(frozen=True, slots=True)
class Plan:
    """What changes before the lines of a step and, to hook up with the key off, after them."""

    before: Changes  # back to normal, before anything else
    first: Changes
    after: Changes
    states: States  # that hold then
    back: Changes = ()  # of a fix: what is put back once it is done
    put_back: tuple[str, ...] = ()  # in words, with `back` or else with `before`
    left: States | None = None  # that hold once the step is left, if others

    @property
    def every(self) -> Changes:
        """All changes, in their order."""
        return (*self.before, *self.first, *self.after, *self.back)

    @property
    def states_left(self) -> States:
        """The states that hold once the step is left."""
        return self.states if self.left is None else self.left


class PlannedLine(NamedTuple):
    """A line to do, what it belongs to, and the states that hold once it is ticked, if others."""

    of: str  # change, do, after, put back
    text: str
    states: States | None = None


def row_of(tables: WalkTables, frame: WalkFrame) -> WalkStepRow:
    """Return the step where a frame is; a fix with how its module is fitted."""
    row = tables[frame.inside]["steps"][frame.step]
    fit = tables.shop["modules"].get(with_values(row.get("replaces", ""), frame.filled))
    return _fitted(tables, row, fit) if fit else row


def _fitted(tables: WalkTables, row: WalkStepRow, fit: FittingRow) -> WalkStepRow:
    """Add how a module is fitted; of its states those of which the step names no other."""
    own = row.get("needs", [])
    places = {place_of(tables.conditions, VehicleState(*state)) for state in own}
    inherited = [
        state
        for state in fit.get("needs", ())
        if place_of(tables.conditions, VehicleState(*state)) not in places
    ]
    more = {
        "needs": [*own, *inherited],
        "do": [*fit.get("do", ()), *row.get("do", ())],
        "when": [*row.get("when", ()), *fit.get("when", ())],
        "hazards": [*row.get("hazards", ()), *fit.get("hazards", ())],
        "torques": [*dict.fromkeys((*row.get("torques", ()), *fit.get("torques", ())))],
    }
    return cast("WalkStepRow", {**row, **{key: value for key, value in more.items() if value}})


def run_key(row: WalkStepRow, frame: WalkFrame) -> str:
    """Return the procedure of a check with what fills it, as one text."""
    takes = sorted(row["by"]["takes"].items())
    filled = (f"{name}={with_values(value, frame.filled)}" for name, value in takes)
    return " ".join((row["by"]["procedure"], *filled))


def proved_elsewhere(state: JobState, row: WalkStepRow) -> tuple[str, str] | None:
    """Return the word that the procedure of another check proved earlier, and that check."""
    frame = state.frames[-1]
    proof = state.proved.get(run_key(row, frame))
    return proof if proof and proof[1] != frame.place else None


def plan_of(tables: WalkTables, state: JobState) -> Plan:
    """Return what changes at the step of a walk."""
    conditions, frame = tables.conditions, state.frames[-1]
    if state.end is not None and state.end.kind == StopKind.UNSAFE:
        return Plan((), (), (), state.now)  # nobody goes back to a vehicle that isn't safe
    if is_over(state) or judges_in_words(state):
        before, now = back_to_normal(conditions, state.now)
        return Plan(before, (), (), now, put_back=state.put_back)
    row = row_of(tables, frame)
    needs = needed(row, frame)
    before, now = _normal_before(tables, state, needs)
    first: Changes = ()
    if "hook_up" in row:
        hook_up = VehicleState(row["hook_up"])
        first, now = changes(conditions, now, while_hooking_up(conditions, needs, hook_up))
    last, now = changes(conditions, now, needs)
    first, after = (first, last) if "hook_up" in row else (last, ())
    if not is_repairing(state):
        words = state.put_back if begins_test(state) else ()
        if state.put_back and any(_starts_engine(tables, one) for one in (*first, *after)):
            off = _until_off(tables, first)
            before, first, words = (*before, *first[:off]), first[off:], state.put_back
        return Plan(before, first, after, now, put_back=words)
    back, left = back_to_normal(conditions, now)
    words = (*state.put_back, *own_put_back(tables, frame))
    return Plan(before, first, after, now, back, tuple(dict.fromkeys(words)), left)


def begins_test(state: JobState) -> bool:
    """Whether a test after the repair begins at this step."""
    return state.to_normal and state.verifying is not None


def own_put_back(tables: WalkTables, frame: WalkFrame) -> tuple[str, ...]:
    """Return what a step takes apart that no state covers."""
    words = row_of(tables, frame).get("put_back")
    return (with_values(words, named(tables, frame)),) if words else ()


def _normal_before(tables: WalkTables, state: JobState, needs: States) -> tuple[Changes, States]:
    if not state.to_normal:
        return (), state.now
    kept: States = ()
    if state.verifying is not None and not state.put_back:
        kept = tuple(one for one in state.now if one in needs)
    conditions = tables.conditions
    kept = () if any(at_odds(conditions, kept)) else kept
    before, now = back_to_normal(conditions, state.now, kept)
    if not any(_is_power(tables, one.left) for one in changes(conditions, now, needs)[0]):
        return before, now
    # What else is needed turns the key off again, so nobody starts the engine in between.
    kept = tuple(one for one in kept if not _is_power(tables, one))
    return back_to_normal(conditions, state.now, kept)


def _is_power(tables: WalkTables, state: VehicleState | None) -> bool:
    return state is not None and tables.conditions[state.condition].group == POWER


def needed(row: WalkStepRow, frame: WalkFrame) -> States:
    """Return the states that a step needs, with their parts filled in."""
    return tuple(
        VehicleState(condition, with_values(part, frame.filled), with_values(value, frame.filled))
        for condition, part, value in row.get("needs", ())
    )


def planned_lines(tables: WalkTables, state: JobState, plan: Plan) -> tuple[PlannedLine, ...]:
    """Return the lines to do at the step, in their order."""
    row, frame = row_of(tables, state.frames[-1]), state.frames[-1]
    is_done = is_over(state) or judges_in_words(state)
    own = () if is_done else row.get("do", ())
    # A fix is put back at its end, before it is verified; any other step before it begins.
    at_end, at_start = (plan.put_back, ()) if is_repairing(state) else ((), plan.put_back)
    return (
        *_put_back_lines(tables, at_start, plan.before, plan.states),
        *_lines(tables, "change", plan.first, plan.states),
        *(PlannedLine("do", with_values(text, named(tables, frame))) for text in own),
        *_lines(tables, "after", plan.after, plan.states),
        *_put_back_lines(tables, at_end, plan.back, plan.states_left),
    )


def _put_back_lines(
    tables: WalkTables, words: Sequence[str], made: Changes, then: States
) -> Iterator[PlannedLine]:
    """Yield what goes back: the engine and the key off, what a step took apart, then the rest.

    So a part is put together with nothing running, and before the battery is connected.
    """
    off = _until_off(tables, made)
    yield from _lines(tables, "put back", made[:off], then)
    yield from (PlannedLine("put back", text) for text in words)
    yield from _lines(tables, "put back", made[off:], then)


def _until_off(tables: WalkTables, made: Changes) -> int:
    """Return how many changes it takes until engine and key are off; 0 where they are."""
    conditions = tables.conditions
    running = (
        at + 1
        for at, one in enumerate(made)
        if one.left
        and _is_power(tables, one.left)
        and not conditions[one.left.condition].normal
        and conditions[one.left.condition].counts_as is not CountsAs.POWER_OFF
        and not _starts_engine(tables, one)
    )
    return next(running, 0)


def _starts_engine(tables: WalkTables, change: Change) -> bool:
    return change.entered is not None and tables.conditions[change.entered.condition].starts_engine


def _lines(tables: WalkTables, of: str, made: Changes, then: States) -> Iterator[PlannedLine]:
    names = tables.shop["parts"]
    yield from (PlannedLine(of, line.words(names), then) for one in made for line in one.told)


def named(tables: WalkTables, frame: WalkFrame) -> dict[str, str]:
    """Return what fills the placeholders of a frame as it is shown: parts by name, not by ID."""
    names = tables.shop["parts"]
    return {name: names.get(value, value) for name, value in frame.filled.items()}


def physical_states(tables: WalkTables, state: JobState) -> States:
    """Return the states of the vehicle as they are: changed if a line to change it is ticked."""
    if not state.ticked or not state.frames:
        return state.now
    lines = planned_lines(tables, state, plan_of(tables, state))
    ticked = [lines[line].states for line in sorted(state.ticked) if line < len(lines)]
    return next((states for states in reversed(ticked) if states is not None), state.now)
