"""Practice on a simulated vehicle: the fault that is hidden, what is seen, what was missed.

In: a tree, the vehicle, a walk on it. Out: words for the terminal.
"""

from collections.abc import Iterator, Mapping
from decimal import Decimal
from itertools import pairwise
from random import Random

from builder.graph.runs import with_values
from builder.model.ends import Fix, Stop
from builder.model.tree import Tree
from builder.walk.drill import simulated_answer, simulated_fill
from builder.walk.job_state import JobState, RecordedStep, is_over
from builder.walk.screen import screen
from builder.walk.simulated_vehicle import SimulatedVehicle, visit_of
from builder.walk.told import named, row_of
from builder.walk.walk_tables import WalkTables


def faults_of(tree: Tree) -> dict[str, Decimal]:
    """Return the ends that can be drilled, with their weights: the fixes, or else the stops."""
    ends = {
        kind: {
            str(step.id): step.body.weight or Decimal(1)
            for step in tree.steps.values()
            if isinstance(step.body, kind)
        }
        for kind in (Fix, Stop)
    }
    return ends[Fix] or ends[Stop]


def drawn_fault(faults: Mapping[str, Decimal], random: Random) -> str:
    """Draw a fault by its weight; where all weigh nothing, any."""
    weights = [float(weight) for weight in faults.values()]
    return random.choices(list(faults), weights if any(weights) else None)[0]


def what_is_seen(tables: WalkTables, vehicle: SimulatedVehicle, state: JobState) -> str:
    """Return what the instruments or the eyes show at the step, without what it means."""
    if asks := screen(tables, state).get("asks"):
        value = simulated_fill(asks[0], vehicle).value
        return f"Not on this vehicle: take {value if isinstance(value, str) else ', '.join(value)}."
    row = row_of(tables, state.frames[-1])
    choice = vehicle.choice_at(state)
    if choice.kind == "pass" and not is_over(state):
        return "It passes now."
    if is_over(state) or row["kind"] != "check":
        return "Nothing to see here: do the work."
    if choice.kind == "run":
        return "The procedure will show it: run it."
    if choice.kind != "result":
        return "It can't be tested on this vehicle."
    answer = simulated_answer(tables, vehicle, state, choice)
    if not answer.readings:
        return with_values(row["results"][choice.result]["text"], named(tables, state.frames[-1]))
    return ", ".join(f"{name} {text}".strip() for name, text in answer.readings.items())


def missed_steps(vehicle: SimulatedVehicle, state: JobState) -> Iterator[str]:
    """Yield the checks that were answered otherwise than the vehicle showed."""
    for before, entry in _answers(state):
        choice = vehicle.shown.get(visit_of(before))
        row = row_of(vehicle.tables, before.frames[-1])
        if choice and choice.kind == "result":
            shown = row["results"][choice.result]["text"]
            if shown != entry.result:
                yield f"  at `{entry.step}` it showed `{shown}`, answered was `{entry.result}`"


def _answers(state: JobState) -> Iterator[tuple[JobState, RecordedStep]]:
    """Yield the checks of a walk that were answered, with the state before each, first first."""
    states = [state]
    while (before := states[-1].before) is not None:
        states.append(before)
    states.reverse()
    for before, after in pairwise(states):
        if len(after.steps) > len(before.steps) and after.steps[len(before.steps)].kind == "check":
            yield before, after.steps[len(before.steps)]
