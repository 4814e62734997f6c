"""The paths of a tree with the states of the vehicle along them.

In: a tree and the library. Out: its `VehiclePaths`; None where the tree names no state, and where a
mistake in its text or in the knowledge leaves open which states hold: what follows from that would
only distract from it.
"""

from collections.abc import Iterable

from builder.graph.needed_states import state_of
from builder.graph.run_frames import PathKnowledge
from builder.graph.sound_conditions import sound_conditions
from builder.graph.step_entry import planner_of
from builder.graph.vehicle_paths import VehiclePaths, names_states, vehicle_paths
from builder.graph.vehicle_states import States
from builder.model.checks import Check
from builder.model.conditions import POWER, Condition, Conditions, VehicleState
from builder.model.library import Library
from builder.model.tree import Tree


def paths_of(tree: Tree, library: Library, entered: Iterable[str]) -> VehiclePaths | None:
    """Return the paths of a tree or a procedure, all of them or none."""
    if not names_states(tree) and not tree.is_procedure:
        return None
    known = sound_conditions(library)
    planner = planner_of(known)
    if not are_planned(known, planner.conditions) or not _is_clear(
        tree, library, planner.conditions
    ):
        return None
    arriving = _any_power(known) if tree.is_procedure else ((),)
    what = PathKnowledge(planner, library.procedures, library.modules)
    return vehicle_paths(tree, what, entered, arriving)


def are_planned(known: Iterable[Condition], conditions: Conditions) -> bool:
    """Whether the planner can turn the key to every state that is named for that."""
    return all(
        key in conditions and conditions[key].group == POWER
        for one in known
        for key in one.changed_with
    )


def _is_clear(tree: Tree, library: Library, conditions: Conditions) -> bool:
    """Whether every step was read and every state that it needs is one."""
    procedures = [
        library.procedures.get(str(step.body.by))
        for step in tree.steps.values()
        if isinstance(step.body, Check) and step.body.by
    ]
    trees = (tree, *(one.tree for one in procedures if one))
    return not any(one.broken for one in trees) and all(
        state_of(conditions, need, step.where) is not None
        for one in trees
        for step in one.steps.values()
        for need in step.needs
    )


def _any_power(known: Iterable[Condition]) -> tuple[States, ...]:
    """Return the states in which the steps that run a procedure may come to it."""
    powers = (one for one in known if one.group == POWER and not one.normal)
    return ((), *((VehicleState(str(one.id)),) for one in powers))
