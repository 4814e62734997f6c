"""The states of the vehicle that a step needs.

In: the shop's conditions and a step. Out: its needs as `VehicleState`s. `{loaded: 9 A}` is a load
at the part that the step names in `at`. Inside a procedure the values that the caller gave are
filled in; what is asked at the vehicle stays as written, such as `<module>`.
"""

import re
from collections.abc import Iterable, Iterator, Mapping

from builder.graph.vehicle_states import States, place_of
from builder.model.conditions import Conditions, Takes, VehicleState
from builder.model.ends import Fix
from builder.model.module_record import Fitting, Module
from builder.model.tree import Need, Question, Step, Tree, Where

Given = Mapping[str, str]  # what a procedure got, by the name of what it takes
PLACEHOLDER = re.compile(r"<([^<>]+)>")
NOTHING_GIVEN: Given = {}


def needed_states(
    conditions: Conditions, step: Step, fit: Fitting | None = None, given: Given = NOTHING_GIVEN
) -> States:
    """Return the states that a step needs, in their order, each once.

    A fix inherits those of the module that it replaces (`fit`), except where it names one of that
    place itself. What is no state, or lacks its part, is left out: that is a finding.
    """
    own = [*_states(conditions, step.needs, step.where, given)]
    if fit:
        taken = {place_of(conditions, state) for state in own}
        inherited = _states(conditions, fit.needs, None, given)
        own += (state for state in inherited if place_of(conditions, state) not in taken)
    return tuple(dict.fromkeys(own))


def state_of(
    conditions: Conditions, need: Need, where: Where | None = None, given: Given = NOTHING_GIVEN
) -> VehicleState | None:
    """Return the state that a need names; None where there is none, or its part is missing."""
    condition = conditions.get(need.condition)
    if condition is None or bool(condition.takes) != bool(need.value):
        return None
    name, value = str(need.condition), filled(need.value or "", given)
    if condition.takes is Takes.CURRENT:
        place = filled(part_at(where), given)
        return VehicleState(name, place, value) if place else None
    return VehicleState(name, value)


def part_at(where: Where | None) -> str:
    """Return the part at which a step works, as written; "" where it names none."""
    if where is None:
        return ""
    return str(where.part or where.connector or where.fuse or "")


def fitting_of(modules: Mapping[str, Module], step: Step) -> Fitting | None:
    """Return how the module is installed that a fix replaces; None where nothing is known."""
    if not isinstance(step.body, Fix) or step.body.replaces is None:
        return None
    module = modules.get(str(step.body.replaces.module))
    return module.fit if module else None


def filled(text: str, given: Given) -> str:
    """Write what was given in the place of `<part>`; what wasn't stays."""
    if not given or "<" not in text:
        return str(text)
    return PLACEHOLDER.sub(lambda match: given.get(match[1], match[0]), text)


def values_given(procedure: Tree, with_: Mapping[str, str], given: Given) -> Given:
    """Return what a procedure gets: from its caller, or what it takes otherwise."""
    return {str(one.name): _value(one, with_, given) for one in procedure.asks}


def _value(taken: Question, with_: Mapping[str, str], given: Given) -> str:
    value = with_.get(str(taken.name), taken.default)
    return filled(value, given) if value is not None else f"<{taken.name}>"


def _states(
    conditions: Conditions, needs: Iterable[Need], where: Where | None, given: Given
) -> Iterator[VehicleState]:
    for need in needs:
        state = state_of(conditions, need, where, given)
        if state:
            yield state
